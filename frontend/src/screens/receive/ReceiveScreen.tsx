/** Receive: what came, from whom. It becomes a lot, or a refusal on record. */
import { useSignal } from "@preact/signals";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { RECEIVE } from "../../text/receive.ts";
import { nextCode } from "../common/codes.ts";
import { type Drafted, useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { materialOf } from "../common/lots.ts";
import { besideNone, hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { FORM, keepAll } from "./keep.ts";
import { type Kept, ReceivedView } from "./ReceivedView.tsx";
import { type NumberOpen, ReceiveFields } from "./ReceiveFields.tsx";
import { ReceiveKeys } from "./ReceiveKeys.tsx";
import { BLANK, missing, type ReceiveTyped } from "./typed.ts";

const SHOWN = [
  "source",
  "material",
  "amount",
  "place",
  "refused_why",
  "life",
  "price",
  "their_lot",
];

/** The form while something is typed, the new lot once it is kept. */
export function Screen() {
  const form = useDrafted<ReceiveTyped>(FORM, BLANK);
  const kept = useSignal<Kept | null>(null);
  if (kept.value !== null) {
    return <ReceivedView kept={kept.value} onNext={() => (kept.value = null)} />;
  }
  return <ReceiveForm form={form} onKept={(receipt) => (kept.value = receipt)} />;
}

function ReceiveForm(props: { form: Drafted<ReceiveTyped>; onKept: (kept: Kept) => void }) {
  const { form } = props;
  const open = useSignal<NumberOpen>(null);
  const found = useFound(form.typed);
  const typed = form.typed.value;
  const code = nextCode(materialOf(typed.material));
  const lacks = missing(typed);

  async function save() {
    if (code === null) return;
    const answer = await keepAll(typed, code);
    found.value =
      "taken" in answer ? { field: "source", sentence: answer.taken } : hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field.split(".")[0]);
    form.clear();
    const entries = answer.saved.filter(({ kind }) => kind !== "source_defined");
    props.onKept({ code, entries: entries.map(({ id }) => id), typed });
  }

  return (
    <Frame
      where={RECEIVE.where}
      title={RECEIVE.title}
      gauge={<HeadGauge />}
      benchName={RECEIVE.bench}
      hasKeypad
      bench={
        <>
          <ReceiveKeys form={form} open={open} />
          <Foot>
            <BackKey href="#/" />
            <MainKey
              words={
                typed.condition === "refused"
                  ? RECEIVE.save_refused(code ?? "")
                  : RECEIVE.save(code ?? "")
              }
              notReady={lacks?.sentence ?? null}
              onNotReady={() => {
                if (lacks?.field === "amount") open.value = "amount";
                focusFirst(lacks?.field);
              }}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(found.value, SHOWN)} />
      <ReceiveFields form={form} open={open} found={found.value} />
    </Frame>
  );
}
