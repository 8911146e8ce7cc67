"""The shapes of requests and answers, with the examples that OpenAPI shows."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field

Tag = Annotated[str, Field(max_length=35, description="BCP 47 language tag", examples=["hi"])]
Text = Annotated[str, Field(min_length=1, max_length=20_000, examples=["Urad Dal Dhuli उड़द दाल 1 kg"])]


class Strict(BaseModel):
    """What comes in: unknown fields are refused, so that a typo is not silently ignored."""

    model_config = ConfigDict(extra="forbid", strict=True)


class Problem(BaseModel):
    """RFC 9457 problem document."""

    type: str = Field(examples=["urn:pulse-glossary:problem:Unknown"])
    title: str
    status: int
    detail: str


class PulseShape(BaseModel):
    """Species, market class, form and colour of what is in one bag; empty means any."""

    key: str = Field(examples=["vigna-mungo//split-dehulled/white"])
    species: str = Field(examples=["Vigna mungo"])
    english: str = Field(examples=["black gram (urad)"])
    market_class: str = ""
    form: str = Field("", examples=["split-dehulled"])
    colour: str = Field("", examples=["white"])


class ReadShape(PulseShape):
    """A pulse with its probability."""

    probability: float = Field(ge=0, le=1)


class UsedShape(BaseModel):
    """A stretch of the label that was read; offsets count Unicode characters."""

    start: int
    end: int
    text: str
    kind: str
    ref: str
    language: str
    how: str
    trust: float


class LookAlikeShape(BaseModel):
    """Something taken for this pulse, and how to tell."""

    key: str
    tell: str
    source: str
    danger: bool


class AnswerShape(BaseModel):
    """One answer to a question and the pulses it leaves."""

    text: str
    pulses: list[str]


class QuestionShape(BaseModel):
    """The question that settles most."""

    id: str
    text: str
    answers: list[AnswerShape]


class ReadingShape(BaseModel):
    """What a label says."""

    verdict: str = Field(examples=["one"])
    readings: list[ReadShape]
    none: float = Field(description="probability that this is no dry pulse")
    used: list[UsedShape]
    unread: list[tuple[int, int]]
    look_alikes: list[LookAlikeShape]
    question: QuestionShape | None
    languages: list[str]


class ReadingsRequest(Strict):
    """One text or many."""

    text: Text | None = None
    texts: list[Text] | None = Field(None, max_length=200)
    languages: list[Tag] = Field(default=[], max_length=20)
    place: str = Field("", max_length=2, description="ISO 3166 country of the shop", examples=["IN"])
    each: bool = Field(False, description="a reading for each product a text names")


class ReadingsAnswer(BaseModel):
    """A list of readings for each text, in order."""

    edition: str
    answers: list[list[ReadingShape]]


class NameShape(BaseModel):
    """One name of a pulse."""

    text: str = Field(examples=["उड़द धुली दाल"])
    script: str = Field(examples=["Deva"])
    language: str
    romanised: str
    use: str
    status: str
    sources: list[str]


class NamesAnswer(BaseModel):
    """Names of one pulse by language."""

    edition: str
    pulse: PulseShape
    names: dict[str, list[NameShape]]


class ClassShape(BaseModel):
    """A market class."""

    id: str
    english: str
    usda: list[str]
    source: str


class PulseSummary(BaseModel):
    """A species in the list."""

    id: str
    latin: str
    english: str
    standing: str
    market_classes: list[str]
    forms: list[str]


class PulsesAnswer(BaseModel):
    """Every species of the glossary."""

    edition: str
    pulses: list[PulseSummary]


class SpeciesAnswer(BaseModel):
    """Everything known of one species but its names and cooking."""

    edition: str
    id: str
    latin: str
    authority: str
    family: str
    english: str
    standing: str
    synonyms: list[str]
    codes: dict[str, list[str]]
    source: str
    market_classes: list[ClassShape]
    sold: list[PulseShape]
    grains: list[dict[str, Any]]
    hazards: list[dict[str, Any]]
    look_alikes: list[LookAlikeShape]
    adulterants: list[dict[str, Any]]


class LanguageShape(BaseModel):
    """A language of the glossary."""

    tag: str
    scripts: list[str]
    rows: int
    checked: float
    full: bool
    named: float


class LanguagesAnswer(BaseModel):
    """Every language of the glossary."""

    edition: str
    languages: list[LanguageShape]


class PackIn(Strict):
    """A pack to remember: its GTIN and what is in it."""

    gtin: str = Field(min_length=8, max_length=14, examples=["4006381333931"])
    pulse: str = Field(max_length=120, examples=["vigna-mungo//split-dehulled/white"])
    label: str = Field("", max_length=500)


class PackOut(BaseModel):
    """A remembered pack."""

    gtin: str
    pulse: PulseShape
    label: str
    status: str
