"""Each worked example of measurement is a vector that names it, as `measurement M13`."""

from __future__ import annotations

import re

from tests.calc.measurement_examples import VECTORS

# What each example is and where its figures come from; basis and digits stand in the vectors.
EXAMPLES = {
    1: "exact factors of units: NIST HB 44 App. C, SP 811 App. B.8",
    2: "which cup: SP 1038 note 19, 21 CFR 101.9",
    3: "rounding: NIST SP 811 B.7.1, SP 1038 4.4.1",
    4: "label rounding: 21 CFR 101.9(b)(5) and (7)",
    5: "temperature and its differences: SP 811 App. B.8, SP 1038 4.4.1.3",
    6: "the larger of two declarations: NIST HB 133 (2026) 2.3.3.1",
    7: "two flours: USDA Standard Reference 26",
    8: "a cup of water by its temperature: Tanaka et al. 2001",
    9: "a cup checked with water, air buoyancy included: computed",
    10: "two portions of one food: USDA Standard Reference 26",
    11: "resolution: JCGM 100:2008 F.2.2.1",
    12: "limits of a scale: OIML R 76-1:2006 Table 6",
    13: "scale class and division for a pack: NIST HB 133 (2026) 2.2.1, Table 2-2",
    14: "minimum weight: USP <41> (2019)",
    15: "deciding with a guard band: JCGM 106:2012 8.3.3",
    16: "repeats: JCGM 100:2008 4.4.3",
    17: "a thermometer's correction line: JCGM 100:2008 H.3",
    18: "Norris: NIST StRD",
    19: "a calibrated value: NIST/SEMATECH e-Handbook 2.3.6.7.3",
    20: "groups by their means and spreads: JCGM 100:2008 H.5",
    21: "SiRstv: NIST StRD",
    22: "pooling: e-Handbook 2.4.4.4",
    23: "people x items x trials: AIAG study",
    24: "arithmetic of net content: NIST HB 133 (2026) 2.3",
    25: "twelve jars: computed after NIST HB 133 (2026) 2.3",
    26: "tolerable negative errors: 76/211/EEC Annex I",
    27: "means and ranges: Montgomery, Example 6.1",
    28: "individuals: SAS/QC guide",
    29: "EWMA: e-Handbook 6.3.2.4",
}
# "measurement", for M1 to M3 alone are also classes of weights (OIML R 111).
_NAMED = re.compile(r'"why": "measurement M(\d+)\b')


def test_every_worked_example_is_named_by_a_vector_that_reproduces_it() -> None:
    named = {
        int(number)
        for path in VECTORS.glob("*/*.json")
        for number in _NAMED.findall(path.read_text(encoding="utf-8"))
    }

    assert named == set(EXAMPLES)
