"""The service over HTTP: answers in their shapes, problems as problems."""

from __future__ import annotations

import pytest

from tests.conftest import Api


def test_pulses_and_one_pulse(api: Api) -> None:
    listed = api.get("/v1/pulses").json()["pulses"]
    assert {"vigna-mungo", "cicer-arietinum", "lens-culinaris"} <= {one["id"] for one in listed}
    one = api.get("/v1/pulses/Vigna%20mungo").json()
    assert one["latin"] == "Vigna mungo"
    assert "vigna-mungo//split-dehulled/white" in {sold["key"] for sold in one["sold"]}


def test_edition_is_the_etag(api: Api) -> None:
    first = api.get("/v1/pulses")
    assert first.headers["etag"].strip('"') == first.json()["edition"]
    again = api.get("/v1/pulses", headers={"If-None-Match": first.headers["etag"]})
    assert again.status_code == 304
    assert again.content == b""


def test_names_by_accept_language(api: Api) -> None:
    answer = api.get(
        "/v1/names",
        params={"species": "Vigna mungo", "form": "split-dehulled"},
        headers={"Accept-Language": "hi;q=0.8, xx;q=0.9"},
    )
    assert list(answer.json()["names"]) == ["hi"]


@pytest.mark.parametrize(
    ("method", "path", "words", "status", "kind"),
    [
        ("GET", "/v1/pulses/vigna%20mongo", {}, 404, "Unknown"),
        ("GET", "/v1/names?species=Vigna+mungo&language=xx", {}, 404, "Unknown"),
        ("GET", "/v1/names?species=Vigna+mungo&language=not_a_tag!!", {}, 422, "BadInput"),
        ("GET", "/v1/names?species=Vigna+mungo&form=halved", {}, 422, "BadInput"),
        ("POST", "/v1/readings", {"json": {"text": ""}}, 422, "BadInput"),
        ("POST", "/v1/readings", {"json": {"text": "   "}}, 422, "BadInput"),
        ("POST", "/v1/readings", {"json": {"texte": "dal"}}, 422, "BadInput"),
        ("POST", "/v1/readings", {"content": b"{"}, 422, "BadInput"),
        ("POST", "/v1/readings", {"json": {"text": "x" * 100_000}}, 422, "BadInput"),
        (
            "PUT",
            "/v1/packs/4006381333932",
            {"json": {"gtin": "4006381333932", "pulse": "vigna-mungo"}},
            422,
            "BadInput",
        ),
        ("GET", "/v1/packs/96385074", {}, 404, "Unknown"),
    ],
)
def test_bad_input_is_a_clear_problem(
    api: Api, method: str, path: str, words: dict[str, object], status: int, kind: str
) -> None:
    answer = api(method, path, **words)
    assert answer.status_code == status
    assert answer.headers["content-type"] == "application/problem+json"
    problem = answer.json()
    assert problem["type"].endswith(kind)
    assert problem["status"] == status
    assert problem["detail"]
    assert "Traceback" not in answer.text


def test_too_large_a_body_is_refused_before_it_is_read(api: Api) -> None:
    answer = api.post("/v1/readings", content=b"x" * 300_000)
    assert answer.status_code == 413
    assert answer.headers["content-type"] == "application/problem+json"


def test_a_pack_is_remembered(api: Api) -> None:
    # GTIN from the worked example of the GS1 check digit calculation: 629104150021 takes check digit 3.
    put = api.put("/v1/packs/6291041500213", json={"gtin": "6291041500213", "pulse": "vigna-mungo"})
    assert put.status_code == 200
    assert api.get("/v1/packs/6291041500213").json()["pulse"]["species"] == "Vigna mungo"


def test_openapi_is_whole(api: Api) -> None:
    document = api.get("/openapi.json").json()
    assert document["openapi"].startswith("3.1")
    assert {"/v1/pulses", "/v1/languages", "/v1/names", "/v1/readings"} <= set(document["paths"])
    names = [
        operation["operationId"]
        for path in document["paths"].values()
        for operation in path.values()
        if "operationId" in operation
    ]
    assert len(names) == len(set(names))
