/** To a business: stock that leaves by name, so that it can be followed one step forward. */
import { useSignal } from "@preact/signals";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { recordTogether } from "../../state/record.ts";
import { remember, remembered } from "../../state/settings.ts";
import { nameOf, recipients, stockAt } from "../../state/stock.ts";
import type { SavedTogether } from "../../state/types.ts";
import { DISPATCH } from "../../text/stall.ts";
import { useDrafted } from "../common/drafted.ts";
import { newId } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { amountText, materialOf } from "../common/lots.ts";
import { sameNameSays } from "../common/namesakes.ts";
import { besideNone, hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { DispatchFields, type DispatchOpen } from "./DispatchFields.tsx";
import { BLANK, type DispatchTyped, dispatchOf, missing } from "./typed.ts";

const SHOWN = ["recipient", "name", "lot", "amount", "price_each", "document", "place"];
const FORM = "dispatch";
const RECENT_MAX = 3;

/** `params.place` is where it leaves from, if the way led over a stall. */
export function Screen({ params }: { params: Record<string, string> }) {
  const place = params.place ?? "";
  const form = useDrafted<DispatchTyped>(FORM, { ...BLANK, place });
  const open = useSignal<DispatchOpen>(null);
  const found = useFound(form.typed);
  const done = useSignal<string | null>(null);
  const typed = form.typed.value;
  const lot = stockAt(typed.place).find((each) => each.lot === typed.lot);
  const words = amountText(
    typedNumber(typed.amount) ?? "0",
    lot?.unit ?? "pc",
    materialOf(lot?.material ?? null),
  );
  const lacks = missing(typed);

  async function save() {
    const taken = typed.recipient === "" ? recipientTaken(typed.recipient_name) : null;
    if (taken !== null) {
      found.value = { field: "recipient", sentence: taken };
      return focusFirst("recipient");
    }
    const answer = await kept(typed, lot?.unit ?? "pc");
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field.split(".")[0]);
    done.value = DISPATCH.done_words(words, typed.lot, recipientName(typed));
    form.clear();
    open.value = null;
    window.scrollTo(0, 0); // to the sentence that says it is kept
  }
  return (
    <Frame
      where={DISPATCH.where}
      title={DISPATCH.title}
      gauge={<HeadGauge />}
      benchName={DISPATCH.bench}
      hasKeypad
      bench={
        <>
          {open.value !== null && (
            <Keypad
              typed={typed[open.value]}
              onTyped={(value) => form.type({ [open.value ?? ""]: value })}
              isWhole={open.value === "amount" && lot?.unit === "pc"}
            />
          )}
          <Foot>
            <BackKey href={place === "" ? "#/" : "#/stall"} />
            <MainKey
              words={DISPATCH.save(words)}
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
      {done.value !== null && (
        <Notice isLive>
          <b>{DISPATCH.done}.</b> {done.value}
        </Notice>
      )}
      <DispatchFields form={form} open={open} found={found.value} recent={recentRecipients()} />
    </Frame>
  );
}

/** The recipient if it is new, and the dispatch, kept together with the end of the draft. */
async function kept(typed: DispatchTyped, unit: string): Promise<SavedTogether> {
  const isNew = typed.recipient === "";
  const recipient = isNew ? newId() : typed.recipient;
  const defined = { recipient, name: typed.recipient_name };
  const answer = await recordTogether(
    [
      ...(isNew ? [{ kind: "recipient_defined", body: defined } as const] : []),
      { kind: "dispatch", body: dispatchOf({ ...typed, recipient }, unit) },
    ],
    FORM,
  );
  if ("saved" in answer) {
    const others = recentRecipients().filter((id) => id !== recipient);
    remember("dispatch.recipients", [recipient, ...others].slice(0, RECENT_MAX));
  }
  return answer;
}

function recipientTaken(name: string): string | null {
  return sameNameSays(recipients.value, { id: "", name, before: null });
}

function recentRecipients(): string[] {
  const known = remembered("dispatch.recipients");
  return Array.isArray(known) ? known.filter((each) => typeof each === "string") : [];
}

function recipientName(typed: DispatchTyped): string {
  return typed.recipient === "" ? typed.recipient_name : nameOf("recipient", typed.recipient);
}
