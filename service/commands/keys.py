"""Make, list and revoke reviewers' keys; a key is shown once and only its hash is kept."""

from __future__ import annotations

import argparse
import os

from sqlmodel import Session

from ..errors import BadInput
from ..store import repository
from ..web import settings
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("what", choices=("make", "list", "revoke"))
    parser.add_argument("name", nargs="?", default="")
    parser.add_argument(
        "--scope", action="append", choices=repository.SCOPES, help="a right; may be repeated"
    )
    parser.add_argument("--database")


def run(args: argparse.Namespace) -> int:
    """0 where it was done."""
    engine = repository.engine(settings(os.environ, database=args.database).database)
    with Session(engine) as session:
        if args.what == "list":
            rows = [
                (one.name, one.scopes, "revoked" if one.revoked else "valid")
                for one in repository.keys(session)
            ]
            out.table(("name", "rights", "state"), rows)
        elif not args.name:
            raise BadInput("name", "", "is missing; give the key a name")
        elif args.what == "make":
            print(repository.make_key(session, args.name, args.scope or ["review"]))
        else:
            repository.revoke_key(session, args.name)
            print(f"{args.name} is revoked")
    engine.dispose()
    return 0
