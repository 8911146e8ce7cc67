"""How often one key or address may ask: a token bucket in memory, or one shared by all workers in Redis."""

from __future__ import annotations

import hashlib
import logging
import time
from collections import OrderedDict
from typing import Any, Protocol

log = logging.getLogger("pulse_glossary")
WINDOW = 60.0
MOST_CALLERS = 50_000
# One step of a token bucket, atomic on the server; the clock is Redis's own, so hosts may disagree.
SCRIPT = """
local rate = tonumber(ARGV[1])
local now = redis.call('TIME')
local at = tonumber(now[1]) + tonumber(now[2]) / 1000000
local kept = redis.call('HMGET', KEYS[1], 'tokens', 'at')
local tokens = math.min(rate, (tonumber(kept[1]) or rate) + (at - (tonumber(kept[2]) or at)) * rate / 60)
local wait = 0
if tokens < 1 then wait = math.ceil((1 - tokens) * 60 / rate) else tokens = tokens - 1 end
redis.call('HSET', KEYS[1], 'tokens', tokens, 'at', at)
redis.call('EXPIRE', KEYS[1], 120)
return wait
"""


class Limit(Protocol):
    """Anything that says how long a caller has to wait, in seconds; 0 to go on."""

    async def wait(self, caller: str) -> int:
        """Seconds to wait."""
        ...


class MemoryLimit:
    """A bucket for each caller in this process; the least recent callers are forgotten."""

    def __init__(self, rate: int) -> None:
        self.rate = rate
        self.buckets: OrderedDict[str, tuple[float, float]] = OrderedDict()

    async def wait(self, caller: str) -> int:
        """Seconds to wait; monotonic, so a jump of the clock changes nothing."""
        at = time.monotonic()
        tokens, last = self.buckets.pop(caller, (float(self.rate), at))
        tokens = min(float(self.rate), tokens + (at - last) * self.rate / WINDOW)
        allowed = tokens >= 1
        self.buckets[caller] = (tokens - 1 if allowed else tokens, at)
        if len(self.buckets) > MOST_CALLERS:
            self.buckets.popitem(last=False)
        return 0 if allowed else max(1, int((1 - tokens) * WINDOW / self.rate) + 1)


class RedisLimit:
    """Buckets shared by all workers; where Redis is gone, each worker counts for itself."""

    def __init__(self, rate: int, address: str) -> None:
        from redis.asyncio import Redis

        self.rate = rate
        self.redis: Any = Redis.from_url(address, socket_timeout=0.5, socket_connect_timeout=0.5)
        self.script = self.redis.register_script(SCRIPT)
        self.fallback = MemoryLimit(rate)
        self.rest_until = 0.0

    async def wait(self, caller: str) -> int:
        """Seconds to wait."""
        from redis.exceptions import RedisError

        if time.monotonic() < self.rest_until:
            return await self.fallback.wait(caller)
        name = "pulse:" + hashlib.sha256(caller.encode()).hexdigest()[:32]
        try:
            return int(await self.script(keys=[name], args=[self.rate]))
        except (RedisError, OSError):
            log.warning("Redis does not answer; counting in memory for five seconds")
            self.rest_until = time.monotonic() + 5.0
            return await self.fallback.wait(caller)


def limit(rate: int, redis: str) -> Limit | None:
    """The limit of these settings, or None for no limit."""
    if rate <= 0:
        return None
    return RedisLimit(rate, redis) if redis else MemoryLimit(rate)
