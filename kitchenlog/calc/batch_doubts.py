"""What a failed check of an instrument means for a batch: one finding for each such check."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kitchenlog.calc.batch_lines import LineWork, line_if_moved, written_line
from kitchenlog.calc.batch_steps import StepWork, step_if_moved, written_step
from kitchenlog.calc.heat_results import HeatResult
from kitchenlog.calc.record import Finding, finding
from kitchenlog.calc.trusted import TrustedReading


@dataclass(frozen=True, kw_only=True)
class _Doubted:
    """Readings of one line or step, or a log, that a failed check puts in question. `change`
    says which verdict would become which if the error counted: `pectin:within:outside`."""

    check: str
    readings: int
    place: str
    change: str | None


def failed_instruments(
    lines: Sequence[LineWork], steps: Sequence[StepWork], heat: Sequence[HeatResult]
) -> list[Finding]:
    """By check: how many readings it puts in question, on which lines and steps and in which
    logs, and which verdicts would change. A log counts once."""
    doubted = [*_in_lines(lines), *_in_steps(steps), *_in_logs(heat)]
    return [
        _finding(check, [each for each in doubted if each.check == check])
        for check in sorted({each.check for each in doubted})
    ]


def _in_lines(lines: Sequence[LineWork]) -> Iterator[_Doubted]:
    for line in lines:
        checks = [check for each in line.readings if (check := _failed_by(each)) is not None]
        if not checks:
            continue
        change = _change(line.line, written_line(line)[0]["verdict"], line_if_moved(line))
        for check in sorted(set(checks)):
            yield _Doubted(
                check=check, readings=checks.count(check), place=line.line, change=change
            )


def _in_steps(steps: Sequence[StepWork]) -> Iterator[_Doubted]:
    for step in steps:
        done = written_step(step)[0]["done"]
        for number, reading in enumerate(step.readings):
            check = _failed_by(reading)
            if check is None:
                continue
            change = _change(step.step, done[number]["verdict"], step_if_moved(step, number))
            yield _Doubted(check=check, readings=1, place=step.step, change=change)


def _in_logs(heat: Sequence[HeatResult]) -> Iterator[_Doubted]:
    for log in heat:
        trust, place = log["trust"], log["entry"]
        if trust is None or trust["failed_by"] is None:
            continue
        change = _change(place, log["verdict"], trust["would_be"])
        yield _Doubted(check=trust["failed_by"], readings=1, place=place, change=change)


def _failed_by(reading: TrustedReading | None) -> str | None:
    return None if reading is None else reading.failed_by


def _change(place: str, was: str | None, would_be: str | None) -> str | None:
    if was is None or would_be is None or was == would_be:
        return None
    return f"{place}:{was}:{would_be}"


def _finding(check: str, doubted: Sequence[_Doubted]) -> Finding:
    detail = {
        "readings": str(sum(each.readings for each in doubted)),
        "where": " ".join(dict.fromkeys(each.place for each in doubted)),
        "would_change": " ".join(each.change for each in doubted if each.change is not None),
    }
    return finding(
        f"instrument_failed:{check}", "instrument_failed", entry=check, detail=detail
    )
