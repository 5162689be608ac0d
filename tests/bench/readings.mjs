// The phone's own calculation, timed by itself: `node readings.mjs COUNT` prints seconds and a sum.
import { parseDecimal, difference } from "../../frontend/src/calc/numbers.ts";
import { doubtOf, verdict } from "../../frontend/src/calc/readings.ts";
import { sumDoubt } from "../../frontend/src/calc/weighing.ts";

const COUNT = Number(process.argv[2]);
const LIMITS = { low: parseDecimal("370"), high: parseDecimal("390") };
const TARE = parseDecimal("120");
const LOADS = ["500", "501", "502", "503", "504", "505", "506"].map(parseDecimal);
const SCALE = { division: parseDecimal("1"), readings: 2, repeatability: parseDecimal("0.4") };
const SLOPE_U = 0.0007;

function judged(count) {
  let within = 0;
  for (let number = 0; number < count; number++) {
    const net = difference(LOADS[number % LOADS.length], TARE);
    const calibration = { u: SLOPE_U * Number(net.toString()), degrees: 8 };
    const doubt = sumDoubt([doubtOf(SCALE), calibration]);
    if (verdict(net, LIMITS, doubt) === "within") within += 1;
  }
  return within;
}

judged(5_000);
const begin = performance.now();
const within = judged(COUNT);
process.stdout.write(JSON.stringify({ seconds: (performance.now() - begin) / 1000, within }));
