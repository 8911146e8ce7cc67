"""Photos drawn for the test: packs in two scripts, barcodes, grains beside a coin, and files that mean harm."""

from __future__ import annotations

import io
import math
import subprocess
import zlib
from typing import Any

import pytest

from service.errors import BadInput, Missing, TooLarge
from service.photo import measure, opened, words
from service.photo.pack import codes
from tests.conftest import Api
from tests.needs import reading_photos, typesetting

Image = pytest.importorskip("PIL.Image", reason="pip install '.[photo]'")
ImageDraw = pytest.importorskip("PIL.ImageDraw")
ImageFont = pytest.importorskip("PIL.ImageFont")
EAN = "4006381333931"  # the worked example of a check digit in the GS1 General Specifications


def _font(family: str, size: int) -> Any:
    path = subprocess.run(
        ["fc-match", "-f", "%{file}", family], capture_output=True, text=True, check=True
    ).stdout
    return ImageFont.truetype(path, size, layout_engine=ImageFont.Layout.BASIC)


def _bytes(picture: Any, kind: str = "PNG", **words: Any) -> bytes:
    out = io.BytesIO()
    picture.save(out, kind, **words)
    return out.getvalue()


def _pack() -> Any:
    picture = Image.new("RGB", (1100, 640), (250, 246, 235))
    pen = ImageDraw.Draw(picture)
    pen.text((60, 60), "URAD DAL DHULI", font=_font("Noto Sans:bold", 84), fill=(30, 30, 30))
    pen.text((60, 200), "Premium quality", font=_font("Noto Sans", 48), fill=(60, 60, 60))
    pen.text((60, 300), "NET WT 1 kg", font=_font("Noto Sans", 48), fill=(60, 60, 60))
    return picture


def _grains(length: float, width: float, colour: tuple[int, int, int], coin_mm: float, scale: float) -> Any:
    picture = Image.new("RGB", (1500, 950), (240, 240, 236))
    pen = ImageDraw.Draw(picture)
    radius = coin_mm / 2 / scale
    pen.ellipse((60, 60, 60 + 2 * radius, 60 + 2 * radius), fill=(120, 110, 90))
    for at in range(20):
        stamp = Image.new("L", (200, 200), 0)
        half = (length / 2 / scale, width / 2 / scale)
        ImageDraw.Draw(stamp).ellipse((100 - half[0], 100 - half[1], 100 + half[0], 100 + half[1]), fill=255)
        stamp = stamp.rotate(at * 37)
        place = (400 + 205 * (at % 5), 30 + 215 * (at // 5))
        picture.paste(Image.new("RGB", (200, 200), colour), place, stamp)
    return picture


def test_a_pack_is_read_in_its_words_and_boxes(api: Api) -> None:
    reading_photos()
    typesetting()
    answer = api.post("/v1/photo-readings", files={"photo": ("pack.png", _bytes(_pack()), "image/png")})
    assert answer.status_code == 200, answer.text
    body = answer.json()
    assert "URAD" in body["text"].upper()
    assert body["reading"]["readings"][0]["species"] == "Vigna mungo"
    left, top, right, bottom = next(one["box"] for one in body["words"] if one["text"].upper() == "URAD")
    assert 40 <= left < right <= 420 and 60 <= top < bottom <= 200


def test_a_barcode_finds_only_what_was_remembered(api: Api) -> None:
    reading_photos()
    import zxingcpp

    code = zxingcpp.create_barcode(EAN, zxingcpp.BarcodeFormat.EAN13).to_image(scale=4)
    picture = Image.new("RGB", (900, 500), "white")
    picture.paste(Image.fromarray(code).convert("RGB"), (200, 150))
    sent = {"photo": ("code.png", _bytes(picture), "image/png")}
    first = api.post("/v1/photo-readings", files=sent).json()
    assert first["codes"] == [EAN] and first["packs"] == {}
    api.put(f"/v1/packs/{EAN}", json={"gtin": EAN, "pulse": "vigna-mungo//split-dehulled/white"})
    assert api.post("/v1/photo-readings", files=sent).json()["packs"] == {
        EAN: "vigna-mungo//split-dehulled/white"
    }


@pytest.mark.parametrize(("length", "width"), [(5.0, 3.8), (9.5, 6.8), (16.0, 8.0)])
def test_grains_beside_a_coin_are_measured(length: float, width: float) -> None:
    pytest.importorskip("scipy")
    found = measure(_grains(length, width, (120, 40, 30), coin_mm=23.25, scale=0.1), 23.25)
    assert found.count == 20 and found.colour == "red"
    assert math.isclose(found.length_mm, length, rel_tol=0.06) and math.isclose(
        found.width_mm, width, rel_tol=0.06
    )


def test_grains_in_a_photo_are_ranked(api: Api) -> None:
    pytest.importorskip("scipy")
    sent = {"photo": ("g.png", _bytes(_grains(16, 8, (120, 40, 30), 23.25, 0.1)), "image/png")}
    body = api.post("/v1/grain-photos", files=sent, data={"coin_mm": "23.25"}).json()
    assert body["ranked"][0]["species"] == "Phaseolus vulgaris"
    assert (body["count"], body["whole"], body["split"]) == (20, 20, 0)


def test_no_coin_and_no_grains_are_told() -> None:
    pytest.importorskip("scipy")
    with pytest.raises(BadInput, match="coin"):
        measure(Image.new("RGB", (400, 400), (240, 240, 236)), 23.25)
    with pytest.raises(BadInput, match="coin_mm"):
        measure(Image.new("RGB", (400, 400)), 400)


def _bomb() -> bytes:
    """A PNG that says it is 30,000 by 30,000 pixels."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return len(data).to_bytes(4, "big") + kind + data + zlib.crc32(kind + data).to_bytes(4, "big")

    head = (30_000).to_bytes(4, "big") * 2 + bytes([8, 0, 0, 0, 0])
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"IDAT", zlib.compress(b"\0" * 1000))
        + chunk(b"IEND", b"")
    )


def _text_bomb() -> bytes:
    """A PNG of one pixel with a comment that unpacks to 80 MB."""
    from PIL.PngImagePlugin import PngInfo

    told = PngInfo()
    told.add_text("Comment", "0" * 80_000_000, zip=True)
    return _bytes(Image.new("L", (1, 1)), pnginfo=told)


@pytest.mark.parametrize(
    ("data", "error"),
    [
        (b"not a picture", BadInput),
        (b"\xff\xd8\xff\xe0" + b"\0" * 50, BadInput),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", BadInput),
        (b"GIF89a" + b"\0" * 40, BadInput),
        (_bomb(), TooLarge),
        (_text_bomb(), BadInput),
        (_bytes(Image.new("RGB", (900, 900), "red"), "JPEG")[:700], BadInput),
        (b"x" * 12_600_000, TooLarge),
    ],
    ids=["text", "broken jpeg", "svg", "gif", "bomb", "text bomb", "cut off", "huge"],
)
@pytest.mark.filterwarnings("ignore::PIL.Image.DecompressionBombWarning")
def test_files_that_mean_harm(data: bytes, error: type[Exception]) -> None:
    with pytest.raises(error):
        opened(data)


def test_a_turned_photo_is_set_upright() -> None:
    exif = Image.Exif()
    exif[0x0112] = 6
    picture = opened(_bytes(Image.new("RGB", (300, 100)), "JPEG", exif=exif))
    assert picture.size == (100, 300)


@pytest.mark.parametrize(
    ("mode", "ink", "seen"),
    [
        ("RGBA", (0, 0, 0, 0), (255, 255, 255)),
        ("LA", (0, 255), (0, 0, 0)),
        ("I;16", 65_535, (255, 255, 255)),
        ("I;16", 25_600, (100, 100, 100)),
        ("1", 1, (255, 255, 255)),
    ],
)
def test_unusual_pictures_look_as_they_should(mode: str, ink: Any, seen: tuple[int, int, int]) -> None:
    assert opened(_bytes(Image.new(mode, (4, 4), ink))).getpixel((1, 1)) == seen


@pytest.mark.parametrize(
    ("kind", "printed", "read"),
    [
        # Worked examples of the GS1 General Specifications and of the UPC-E rules (zero suppression).
        ("EAN13", EAN, EAN),
        ("EAN8", "96385074", "96385074"),
        ("UPCA", "036000291452", "0036000291452"),
        ("UPCE", "04252614", "0042100005264"),
        ("ITF", "15400141288763", "15400141288763"),
        ("Code128", "4006381333931", None),
        ("QRCode", "4006381333931", None),
    ],
)
def test_article_numbers_are_taken_from_article_codes_alone(
    kind: str, printed: str, read: str | None
) -> None:
    reading_photos()
    import zxingcpp

    bars = zxingcpp.create_barcode(printed, getattr(zxingcpp.BarcodeFormat, kind)).to_image(scale=4)
    picture = Image.new("RGB", (900, 500), "white")
    picture.paste(Image.fromarray(bars).convert("RGB"), (100, 100))
    assert codes(picture) == ((read,) if read else ())


def test_boxes_are_those_of_the_photo_as_it_was_sent() -> None:
    reading_photos()
    typesetting()
    turned = _pack().rotate(90, expand=True)
    seen = words(turned, ("Latn",))
    left, top, right, bottom = next(one.box for one in seen.words if one.text == "DHULI")
    assert turned.size == (640, 1100)
    assert 40 < left < right < 170 and 200 < top < bottom < 700, (left, top, right, bottom)


def test_a_script_that_is_not_installed_is_named() -> None:
    reading_photos()
    with pytest.raises(Missing, match="Xsux.*"):
        words(Image.new("RGB", (80, 80), "white"), ("Xsux",))


def test_a_bare_ground_has_no_words() -> None:
    reading_photos()
    assert words(Image.new("RGB", (300, 200), (200, 190, 170)), ("Latn",)).text == ""


def test_a_missing_engine_says_how_to_get_it(monkeypatch: pytest.MonkeyPatch, api: Api) -> None:
    monkeypatch.setattr("service.photo.engine.FOLDERS", ())
    monkeypatch.delenv("TESSDATA_PREFIX", raising=False)
    answer = api.post(
        "/v1/photo-readings", files={"photo": ("p.png", _bytes(Image.new("RGB", (50, 50))), "image/png")}
    )
    assert answer.status_code == 501 and "tesseract-ocr" in answer.json()["detail"]
    assert words is not None
