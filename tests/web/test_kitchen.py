"""Guidance and swaps over HTTP."""

from __future__ import annotations

import pytest

from tests.conftest import Api

KIDNEY = {"species": "Phaseolus vulgaris", "market_class": "kidney", "form": "whole"}


def test_guidance_carries_its_cautions_and_sources(api: Api) -> None:
    body = api.post("/v1/guidance", json={**KIDNEY, "vessel": "pressure", "gauge_kpa": 103}).json()
    assert body["minutes"][0] < body["minutes"][1]
    assert body["cautions"][0]["id"] == "lectin-boil" and body["cautions"][0]["severity"] == "danger"
    assert body["sources"] and body["steps"] and body["whistles"]


def test_a_refusal_is_an_answer_not_an_error(api: Api) -> None:
    answer = api.post("/v1/guidance", json={**KIDNEY, "vessel": "slow"})
    assert answer.status_code == 200
    assert answer.json()["minutes"] is None and "slow cooker" in answer.json()["refused"]


@pytest.mark.parametrize(
    ("words", "field"),
    [({"altitude_m": 1e6}, "altitude_m"), ({"gauge_kpa": -5}, "gauge_kpa"), ({"vessel": "wok"}, "vessel"), ({"cup": 1}, "cup")],
)  # fmt: skip
def test_an_absurd_kitchen_is_a_problem(api: Api, words: dict[str, object], field: str) -> None:
    answer = api.post("/v1/guidance", json={**KIDNEY, **words})
    assert answer.status_code == 422
    assert answer.headers["content-type"].startswith("application/problem+json")
    assert field in answer.text and "Traceback" not in answer.text


def test_swaps_are_of_the_same_use_and_say_what_is_new(api: Api) -> None:
    asked = {
        "species": "Cajanus cajan",
        "form": "split-dehulled",
        "colour": "yellow",
        "vessel": "pressure",
        "gauge_kpa": 80,
    }
    found = api.post("/v1/swaps", json=asked).json()["swaps"]
    species = [one["species"] for one in found]
    assert {"Pisum sativum", "Cicer arietinum"} <= set(species)
    assert "Lathyrus sativus" not in species
    assert all(one["form"].startswith("split") or one["form"] == "whole-dehulled" for one in found)
    assert found == sorted(found, key=lambda one: -one["likeness"])
    beans = api.post(
        "/v1/swaps", json={"species": "Vigna unguiculata", "market_class": "black-eyed", "form": "whole"}
    ).json()
    for one in beans["swaps"]:
        if one["species"].startswith("Phaseolus"):
            assert any("boil" in text for text in one["warnings"])


def test_the_page_speaks_the_languages_it_lists(api: Api) -> None:
    listed = api.get("/page/say/list.json").json()["languages"]
    assert {"en", "hi"} <= {one["tag"] for one in listed}
    for one in listed:
        words = api.get(f"/page/say/{one['tag']}.json").json()["words"]
        assert words["vessel"] and one["name"]
    assert api.get("/page/say/xx.json").status_code == 404
    assert api.get("/page/..%2F..%2Fpyproject.toml").status_code == 404
