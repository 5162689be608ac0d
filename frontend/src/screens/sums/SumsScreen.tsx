/** Every sum at the bench, with its sign; for a batch where it was opened from one. */
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { SUMS } from "../../text/sums.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { batchOf } from "../common/batches.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { ALL_SUMS } from "./sums.ts";
import "./sums.css";

/** `#/sums`, and `#/batch/:batch/sums`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const batch = batchOf(params.batch ?? "")?.state ?? null;
  const of = batch === null ? "" : `/${batch.batch}`;
  const back = batch === null ? "#/" : `#/batch/${batch.batch}`;
  const [first = ""] = Object.keys(ALL_SUMS);
  return (
    <Frame
      where={batch === null ? SUMS.where : <BatchNamed batch={batch} />}
      title={SUMS.title}
      gauge={<HeadGauge />}
      calm={SUMS.what}
      benchName={SUMS.bench}
      bench={
        <Foot>
          <BackKey href={back} />
          <MainKey words={ALL_SUMS[first]?.title} href={`#/sums/${first}${of}`} />
        </Foot>
      }
    >
      <nav aria-label={SUMS.title}>
        <ul class="sums">
          {Object.entries(ALL_SUMS).map(([name, { title, what, sign }]) => (
            <li key={name}>
              <Cup class="sum-cup" href={`#/sums/${name}${of}`}>
                <Icon name={sign} size={36} />
                <span>
                  <b>{title}</b>
                  <span class="second">{what}</span>
                </span>
              </Cup>
            </li>
          ))}
        </ul>
      </nav>
    </Frame>
  );
}
