"""Cooking figures by species, from the glossary as it stands."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from service.glossary.cooking import Figures
from service.glossary.model import Glossary, Pulse
from service.kitchen import Guidance, Kitchen, guide

Cook = Callable[..., Guidance]


@pytest.fixture(scope="session")
def figures(glossary: Glossary) -> Mapping[str, Figures]:
    """Figures of every species."""
    return {slug: species.cooking for slug, species in glossary.species.items()}


@pytest.fixture(scope="session")
def cook(figures: Mapping[str, Figures]) -> Cook:
    """Guidance for a pulse key and words of a kitchen."""

    def one(key: str, **words: Any) -> Guidance:
        pulse = Pulse.of(key)
        return guide(pulse, Kitchen(**words), figures[pulse.species])

    return one
