"""Student's distribution by a plain integral, beside which tables and factors are held."""

from __future__ import annotations

import math


def share_below(t: float, degrees: int) -> float:
    """Share of Student's distribution below t, by Simpson's rule on its density."""
    log_scale = math.lgamma((degrees + 1) / 2) - math.lgamma(degrees / 2)
    scale = math.exp(log_scale) / math.sqrt(degrees * math.pi)
    steps = 4_000
    width = t / steps
    weights = (1 if i in (0, steps) else 4 if i % 2 else 2 for i in range(steps + 1))
    area = sum(
        weight * (1 + (i * width) ** 2 / degrees) ** (-(degrees + 1) / 2)
        for i, weight in enumerate(weights)
    )
    return 0.5 + scale * area * width / 3
