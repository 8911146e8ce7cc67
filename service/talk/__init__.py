"""Conversation: state in, text in; state out, reply out. The same reply for chat, SMS and speech."""

from .sms import Parts, sms
from .speech import ssml
from .tongue import Tongue, messages
from .turn import Reply, State, turn

__all__ = ["Parts", "Reply", "State", "Tongue", "messages", "sms", "ssml", "turn"]
