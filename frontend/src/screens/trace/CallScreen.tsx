/** Who to call: every business that got any of it, with how much of which lot and how to reach them. */
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { CALL } from "../../text/trace.ts";
import { Business } from "../common/Business.tsx";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { isNobodyToCall, soldPrivately, toCall } from "./steps.ts";
import { useTrace } from "./use_trace.ts";
import "./trace.css";

/** `params.lot` is the lot that is called back. */
export function Screen({ params }: { params: Record<string, string> }) {
  const lot = params.lot ?? "";
  const { ways, says, isComplete } = useTrace(lot);
  const businesses = toCall(ways);
  const stalls = soldPrivately(ways);
  return (
    <Frame
      where={CALL.where}
      title={lot}
      gauge={<HeadGauge />}
      calm={says}
      benchName={CALL.bench}
      bench={
        <Foot>
          <BackKey href={`#/trace/${lot}`} />
          <MainKey words={CALL.print} onPress={() => window.print()} />
        </Foot>
      }
    >
      {!isComplete && <Notice>{CALL.incomplete}</Notice>}
      {isNobodyToCall(ways) && <Notice>{CALL.none}</Notice>}
      {businesses.map((each) => (
        <Business key={each.recipient} business={each} />
      ))}
      {stalls.length > 0 && (
        <Part title={CALL.private}>
          <p class="second">{CALL.private_why}</p>
          <Facts rows={stalls.map(({ name, amount }) => ({ name, value: amount }))} />
        </Part>
      )}
    </Frame>
  );
}
