"""Menus, charts and cards over HTTP."""

from __future__ import annotations

from tests.conftest import Api

MENU = {
    "title": "An invented supper",
    "languages": ["en", "gu"],
    "sections": [{"name": "Dals", "dishes": [{"name": "Tuver dal", "pulses": ["tuver dal"], "price": "6"}]}],
    "staff": True,
}


def test_a_menu_as_page_and_as_markdown(api: Api) -> None:
    page = api.post("/v1/menus", json=MENU)
    assert page.status_code == 200 and page.headers["content-type"].startswith("text/html")
    assert "તુવેર" in page.text and "Tuver dal" in page.text
    text = api.post("/v1/menus", json=MENU, headers={"Accept": "text/markdown"})
    assert text.text.startswith("# An invented supper")


def test_an_unsure_dish_stops_the_print_with_the_question(api: Api) -> None:
    unsure = {**MENU, "sections": [{"name": "Dals", "dishes": [{"name": "Dal", "pulses": ["dal"]}]}]}
    answer = api.post("/v1/menus", json=unsure)
    assert answer.status_code == 422 and "several" in answer.json()["detail"]


def test_a_chart_as_csv_leaves_gaps_blank(api: Api) -> None:
    asked = {
        "languages": ["hi", "kha"],
        "pulses": ["vigna-mungo//split-dehulled/white", "lupinus-albus//whole"],
    }
    answer = api.post("/v1/charts", json=asked, headers={"Accept": "text/csv"})
    assert answer.headers["content-type"].startswith("text/csv")
    assert "उड़द धुली दाल" in answer.text
    assert api.post("/v1/charts", json={**asked, "languages": ["xx"]}).status_code == 404
    assert api.post("/v1/charts", json=asked, headers={"Accept": "application/x-tar"}).status_code == 422


def test_cards(api: Api) -> None:
    asked = {"pulses": ["vigna-radiata//whole"], "languages": ["ta", "ur"]}
    page = api.post("/v1/cards", json=asked).text
    assert 'dir="rtl"' in page and "<svg" in page
    assert api.post("/v1/cards", json={"pulses": [], "languages": ["ta"]}).status_code == 422
