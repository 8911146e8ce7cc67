"""The page in a real Chromium, on a phone held in one hand and on a desk."""

from __future__ import annotations

import socket
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
import uvicorn

from service.glossary.model import Glossary
from service.web import Settings, create_app
from tests.needs import browser, reading_photos

playwright = pytest.importorskip("playwright.sync_api", reason="pip install playwright")
Page = playwright.Page
PHONE = {"width": 360, "height": 740}
DESK = {"width": 1280, "height": 800}


@pytest.fixture(scope="module")
def address(glossary: Glossary) -> Iterator[str]:
    """The service on a free port of this machine."""
    browser()
    app = create_app(Settings(database="sqlite://", rate=0), glossary)
    with _serving(app) as found:
        yield found


@contextmanager
def _serving(app: object) -> Iterator[str]:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    server = uvicorn.Server(uvicorn.Config(app, host="127.0.0.1", port=port, log_level="error"))
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.05)
    yield f"http://127.0.0.1:{port}"
    server.should_exit = True
    thread.join(10)


@pytest.fixture(scope="module")
def chromium() -> Iterator[object]:
    """One browser for all."""
    path = browser()
    with playwright.sync_playwright() as driver:
        one = driver.chromium.launch(executable_path=path, args=["--no-sandbox"])
        yield one
        one.close()


@pytest.fixture(params=[PHONE, DESK], ids=["phone", "desk"])
def page(request: pytest.FixtureRequest, chromium: object, address: str) -> Iterator[Page]:
    """A fresh page; a script error or a failed request fails the test."""
    faults: list[str] = []
    context = chromium.new_context(viewport=request.param, locale="en-GB")  # type: ignore[attr-defined]
    one = context.new_page()
    one.on("pageerror", lambda error: faults.append(str(error)))
    one.on("console", lambda line: faults.append(line.text) if line.type == "error" else None)
    one.goto(address)
    one.wait_for_selector("#tongue option", state="attached")
    yield one
    context.close()
    assert faults == []


def read(page: Page, label: str) -> None:
    """Type a label and press Enter."""
    page.evaluate("document.querySelector('#answer').replaceChildren()")
    page.fill("#label-text", label)
    page.press("#label-text", "Enter")
    page.wait_for_selector("#answer article")


@pytest.mark.parametrize(
    ("label", "name"),
    [("Urad Dal Dhuli 1 kg", "black gram"), ("पीली मूंग दाल", "mung bean"), ("துவரம் பருப்பு", "pigeon pea")],
)
def test_reads_in_three_scripts(page: Page, label: str, name: str) -> None:
    read(page, label)
    assert name in page.inner_text("#answer h2")
    page.click("summary:has-text('Why')")
    assert page.locator("#answer mark").count() >= 1


def test_nothing_is_wider_than_the_screen(page: Page) -> None:
    read(page, "Urad Dal Dhuli 1 kg")
    for view in ("read", "grains", "browse", "paper", "kitchen"):
        page.evaluate(f"location.hash = '{view}'")
        page.wait_for_timeout(200)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), view


def test_settles_an_ambiguous_label(page: Page) -> None:
    read(page, "yellow dal")
    assert "may be" in page.inner_text("#answer h2")
    page.locator("#answer .choices button").first.click()
    page.wait_for_selector("#answer h2")
    for _ in range(3):
        if page.locator("summary:has-text('Cook it')").count():
            break
        page.locator("#answer li button").first.click()
        page.wait_for_timeout(200)
    assert page.locator("summary:has-text('Cook it')").count()


def test_cooks_at_altitude_in_the_kitchen_kept_on_the_device(page: Page) -> None:
    read(page, "kabuli chana")
    page.click("summary:has-text('Cook it')")
    low = page.inner_text("#answer dl")
    page.evaluate("location.hash = 'kitchen'")
    page.fill("input[name=altitude_m]", "2500")
    page.dispatch_event("input[name=altitude_m]", "change")
    page.evaluate("location.hash = 'read'")
    read(page, "kabuli chana")
    page.click("summary:has-text('Cook it')")
    page.wait_for_selector("#answer dl")
    assert page.inner_text("#answer dl") != low


def test_kidney_beans_carry_their_danger(page: Page) -> None:
    read(page, "rajma red kidney beans")
    page.click("summary:has-text('Cook it')")
    page.wait_for_selector("#answer .caution:has-text('boil hard')")
    assert "12 hours" in page.inner_text("#answer")


def test_asks_for_it_and_swaps(page: Page) -> None:
    read(page, "toor dal")
    page.click("summary:has-text('Ask for it')")
    page.wait_for_selector("#answer .big")
    page.locator("#answer select").select_option("ta")
    page.wait_for_selector("#answer .big[lang^='ta']")
    page.click("summary:has-text('Use instead')")
    page.wait_for_selector("#answer li strong")


def test_poison_among_loose_grains_is_said_first(page: Page) -> None:
    page.evaluate("location.hash = 'grains'")
    page.wait_for_selector("#grain-steps button")
    for _ in range(6):
        for words in ("whole", "red", "black patch", "glossy", "6.5", "oval"):
            button = page.locator("#grain-steps .choices button", has_text=words)
            if button.count() and button.first.inner_text().strip() == words:
                button.first.click()
                page.wait_for_timeout(250)
                break
    assert "never food" in page.inner_text("#grain-steps")


def test_works_again_without_a_signal(page: Page, address: str) -> None:
    read(page, "masoor dal")
    page.evaluate("navigator.serviceWorker.ready")
    page.wait_for_timeout(600)
    page.reload()
    page.wait_for_timeout(600)
    read(page, "masoor dal")
    page.context.set_offline(True)
    page.reload()
    page.wait_for_selector("#label-text")
    page.context.set_offline(False)


def test_speaks_urdu_from_right_to_left(page: Page) -> None:
    page.select_option("#tongue", "ur")
    page.wait_for_selector("html[dir=rtl][lang=ur]", state="attached")
    page.wait_for_timeout(300)
    assert any("\u0600" <= char <= "\u06ff" for char in page.inner_text("#h-read"))
    read(page, "urad dal dhuli")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.click("#answer details summary")
    page.wait_for_selector("#answer ol li")
    assert any("\u0600" <= char <= "\u06ff" for char in page.inner_text("#answer ol"))


def test_a_printed_code_opens_its_pulse(page: Page, address: str) -> None:
    page.goto(f"{address}/#read=vigna-mungo//split-dehulled/white")
    page.wait_for_selector("#answer article h2")
    assert "black gram" in page.inner_text("#answer h2")


def test_a_card_to_print(page: Page) -> None:
    read(page, "toor dal")
    page.click("summary:has-text('Ask for it')")
    page.wait_for_selector("#answer .big")
    with page.expect_download() as waiting:
        page.click("button:has-text('Card to print')")
    assert waiting.value.suggested_filename in ("card.pdf", "card.html")


def test_a_kitchen_of_other_pots_and_old_grains(page: Page) -> None:
    page.evaluate("location.hash = 'kitchen'")
    assert page.is_visible("input[name=gauge_kpa]") and not page.is_visible("select[name=setting]")
    page.select_option("select[name=vessel]", "electric")
    assert page.is_visible("select[name=setting]") and not page.is_visible("input[name=gauge_kpa]")
    page.select_option("select[name=age]", "old")
    page.select_option("select[name=dish]", "soupy")
    page.fill("input[name=pot_l]", "1.5")
    page.fill("input[name=dry_g]", "600")
    page.dispatch_event("input[name=dry_g]", "change")
    page.evaluate("location.hash = 'read'")
    read(page, "kabuli chana")
    with page.expect_request("**/v1/guidance") as sent:
        page.click("summary:has-text('Cook it')")
    page.wait_for_selector("#answer dl")
    body = sent.value.post_data_json
    assert body["vessel"] == "electric" and body["setting"] == "high" and body["age"] == "old"
    assert body["dish"] == "soupy" and body["pot_l"] == 1.5 and body["dry_g"] == 600
    assert "In how many goes" in page.inner_text("#answer dl")


def test_what_comes_to_the_table_and_when_to_start(page: Page) -> None:
    read(page, "kabuli chana 1 kg")
    page.click("summary:has-text('Cook it')")
    page.wait_for_selector("dt:has-text('A portion (70 g dry)')")
    assert "protein 14.3 g" in page.inner_text("#answer dl")
    page.fill("#answer input[type=time]", "20:30")
    page.click("button:has-text('Plan the day')")
    page.wait_for_selector("dd:has-text('Throw the soak water away')")
    with page.expect_download() as waiting:
        page.click("button:has-text('Into a calendar')")
    assert waiting.value.suggested_filename == "day.ics"
    assert "SUMMARY:chickpea: soak" in Path(waiting.value.path()).read_text("utf-8")


def test_a_chart_to_print(page: Page) -> None:
    page.evaluate("location.hash = 'paper'")
    page.select_option("#form-chart select[name=kind]", "look-alikes")
    page.select_option("#form-chart select[name=language] >> nth=1", "ta")
    page.evaluate("location.hash = 'read'")
    page.evaluate("location.hash = 'paper'")
    with page.expect_request("**/v1/charts") as asked, page.expect_download() as waiting:
        page.click("#form-chart button")
    assert asked.value.post_data_json == {"kind": "look-alikes", "languages": ["en", "ta"]}
    assert waiting.value.suggested_filename in ("chart.pdf", "chart.html")


def test_an_unsure_dish_stops_the_menu_with_the_question(chromium: object, address: str) -> None:
    page = chromium.new_page(viewport=PHONE, locale="en-GB")  # type: ignore[attr-defined]
    page.goto(f"{address}/#paper")
    page.wait_for_selector("#form-menu select[name=language] option[value=gu]", state="attached")
    page.select_option("#form-menu select[name=language] >> nth=1", "gu")
    page.fill("#form-menu input[name=title]", "An invented supper")
    page.fill("#form-menu textarea", "Dals:\nGreen bowl | beans | 7.50")
    page.click("#form-menu button")
    page.wait_for_selector("#form-menu .caution")
    assert "'beans' may be several pulses" in page.inner_text("#form-menu .caution")
    page.fill("#form-menu textarea", "Dals:\nGreen bowl | moong dal, chana dal | 7.50\nSides:\nRice")
    with page.expect_request("**/v1/menus") as asked, page.expect_download() as waiting:
        page.click("#form-menu button")
    assert asked.value.post_data_json["sections"] == [
        {
            "name": "Dals",
            "dishes": [{"name": "Green bowl", "pulses": ["moong dal", "chana dal"], "price": "7.50"}],
        },
        {"name": "Sides", "dishes": [{"name": "Rice", "pulses": [], "price": ""}]},
    ]
    assert waiting.value.suggested_filename in ("menu.pdf", "menu.html")
    assert page.inner_text("#form-menu [role=alert]") == ""
    page.close()


def test_a_photo_of_a_pack_is_read(page: Page, tmp_path: Path) -> None:
    reading_photos()
    from tests.photo.test_photo import _pack

    _pack().save(tmp_path / "pack.png")
    page.set_input_files("#label-photo", tmp_path / "pack.png")
    page.wait_for_selector("#answer article h2")
    assert "black gram" in page.inner_text("#answer h2")


def test_is_light_and_quick(page: Page) -> None:
    folder = Path(__file__).resolve().parents[2] / "clients" / "page"
    assert sum(path.stat().st_size for path in folder.rglob("*") if path.is_file()) < 250_000
    read(page, "warm it up")
    page.evaluate("window.begun = performance.now()")
    read(page, "chana dal")
    assert page.inner_text("#answer h2")


def test_every_control_has_a_name_and_a_size(page: Page) -> None:
    read(page, "urad dal")
    nameless = page.evaluate(
        """() => [...document.querySelectorAll('button, select, input, textarea, a')].filter((one) =>
        one.offsetParent && !(one.innerText || '').trim() && !one.getAttribute('aria-label')
        && !(one.labels && one.labels.length)).map((one) => one.outerHTML)"""
    )
    assert nameless == []
    small = page.evaluate(
        """() => [...document.querySelectorAll('button, select, textarea, summary')].filter((one) =>
        one.offsetParent && one.getBoundingClientRect().height < 24).map((one) => one.outerHTML)"""
    )
    assert small == []


def test_a_reviewer_accepts_with_a_reason(chromium: object, tmp_path: Path) -> None:
    from sqlmodel import Session

    from service.glossary.build import build
    from service.store import repository
    from tests.tiny import tiny_files

    held = tiny_files()
    app = create_app(Settings(database=f"sqlite:///{tmp_path / 'people.db'}", rate=0), build(held), held)
    with Session(app.state.engine) as session:
        key = repository.make_key(session, "ana", ["review"])
    with _serving(app) as address:
        import httpx

        body = {
            "kind": "name",
            "text": "उरद",
            "lang": "hi",
            "script": "Deva",
            "row_kind": "base",
            "ref": "vigna-mungo",
        }
        assert httpx.post(f"{address}/v1/suggestions", json=body).status_code == 201
        one = chromium.new_page(viewport=PHONE)  # type: ignore[attr-defined]
        one.goto(f"{address}/review")
        one.fill("#key", key)
        one.click("text=Show them")
        one.wait_for_selector("article h2")
        one.click("text=Accept >> nth=-1")
        assert "reason" in one.inner_text("#state")
        one.fill("article input", "seen on a pack")
        one.click("article button.main")
        one.wait_for_selector("#state:has-text('accepted')")
        one.click("#diff")
        one.wait_for_selector("pre:has-text('उरद')")
        one.close()


@pytest.mark.parametrize("view", ["read", "grains", "browse", "paper", "kitchen"])
def test_axe_finds_nothing(page: Page, view: str) -> None:
    axe = pytest.importorskip(
        "axe_playwright_python.sync_playwright", reason="pip install axe-playwright-python"
    )
    read(page, "urad dal dhuli 1 kg")
    page.click("summary:has-text('Cook it')")
    page.evaluate(f"location.hash = '{view}'")
    page.wait_for_timeout(600)
    found = axe.Axe().run(page).response["violations"]
    assert [(one["id"], [node["html"][:80] for node in one["nodes"]][:3]) for one in found] == []
