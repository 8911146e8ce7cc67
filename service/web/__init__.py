"""The service over HTTP."""

from .app import create_app
from .settings import Settings, settings

__all__ = ["Settings", "create_app", "settings"]
