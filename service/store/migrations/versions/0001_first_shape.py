"""first shape: packs, suggestions, decisions, receipts, keys, kitchens, menus, version"""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "key",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(length=64), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("scopes", sa.String(length=120), nullable=False),
        sa.Column("revoked", sa.Boolean(), nullable=False),
        sa.Column("created", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("digest"),
        sa.UniqueConstraint("name"),
    )
    op.create_table(
        "kitchen",
        sa.Column("name", sa.String(length=64), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("changed", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("name"),
    )
    op.create_table(
        "menu",
        sa.Column("name", sa.String(length=64), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("changed", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("name"),
    )
    op.create_table(
        "pack",
        sa.Column("gtin", sa.String(length=14), nullable=False),
        sa.Column("pulse", sa.String(length=120), nullable=False),
        sa.Column("label", sa.String(length=500), nullable=False),
        sa.Column("status", sa.String(length=20), nullable=False),
        sa.Column("changed", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("gtin"),
    )
    op.create_table(
        "receipt",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("key", sa.String(length=128), nullable=False),
        sa.Column("action", sa.String(length=40), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("answer", sa.Text(), nullable=False),
        sa.Column("created", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("key", "action"),
    )
    op.create_table(
        "suggestion",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(length=20), nullable=False),
        sa.Column("lang", sa.String(length=35), nullable=False),
        sa.Column("script", sa.String(length=4), nullable=False),
        sa.Column("row_kind", sa.String(length=10), nullable=False),
        sa.Column("ref", sa.String(length=120), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("use", sa.String(length=10), nullable=False),
        sa.Column("agrees", sa.String(length=40), nullable=False),
        sa.Column("note", sa.String(length=500), nullable=False),
        sa.Column("evidence", sa.Text(), nullable=False),
        sa.Column("sender", sa.String(length=64), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("times", sa.Integer(), nullable=False),
        sa.Column("status", sa.String(length=20), nullable=False),
        sa.Column("created", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("digest"),
    )
    with op.batch_alter_table("suggestion", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_suggestion_kind"), ["kind"], unique=False)
        batch_op.create_index(batch_op.f("ix_suggestion_status"), ["status"], unique=False)

    op.create_table(
        "version",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id"),
    )
    op.create_table(
        "decision",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("suggestion", sa.Integer(), nullable=False),
        sa.Column("verdict", sa.String(length=20), nullable=False),
        sa.Column("reason", sa.String(length=500), nullable=False),
        sa.Column("reviewer", sa.String(length=64), nullable=False),
        sa.Column("created", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["suggestion"],
            ["suggestion.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
    )
    with op.batch_alter_table("decision", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_decision_suggestion"), ["suggestion"], unique=False)


def downgrade() -> None:
    with op.batch_alter_table("decision", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_decision_suggestion"))

    op.drop_table("decision")
    op.drop_table("version")
    with op.batch_alter_table("suggestion", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_suggestion_status"))
        batch_op.drop_index(batch_op.f("ix_suggestion_kind"))

    op.drop_table("suggestion")
    op.drop_table("receipt")
    op.drop_table("pack")
    op.drop_table("menu")
    op.drop_table("kitchen")
    op.drop_table("key")
