/** What is to be earned, what a stall keeps, and in which coins: of a price and of the rates. */
import { CupChoice } from "../../parts/Choices.tsx";
import { FieldGroup, NumberField } from "../../parts/Fields.tsx";
import { PRICE } from "../../text/money.ts";
import { currency } from "./costs.ts";
import { type Earning, ruleOf } from "./proposal.ts";

export type EarnNumber = "percent" | "commission" | "coin";

interface EarnFieldsProps {
  typed: Earning;
  onTyped: (part: Partial<Earning>) => void;
  /** The number the keypad types into. */
  open: string;
  onOpen: (at: EarnNumber) => void;
}

export function EarnFields({ typed, onTyped, open, onOpen }: EarnFieldsProps) {
  const number = (at: EarnNumber, label: string, unit: string | null) => (
    <NumberField
      label={label}
      typed={typed[at]}
      unit={unit}
      isOpen={open === at}
      onOpen={() => onOpen(at)}
    />
  );
  return (
    <>
      <FieldGroup label={PRICE.earn}>
        <CupChoice
          name={PRICE.earn}
          options={PRICE.of}
          chosen={typed.of === "cost" ? "cost" : "price"}
          onChoose={(of) => onTyped({ of })}
        />
      </FieldGroup>
      {number("percent", PRICE.percent, "%")}
      {number("commission", PRICE.commission, "%")}
      {number("coin", PRICE.coin, currency())}
      <FieldGroup label={PRICE.rule}>
        <CupChoice
          name={PRICE.rule}
          options={PRICE.rules}
          chosen={ruleOf(typed.rule)}
          onChoose={(rule) => onTyped({ rule })}
        />
      </FieldGroup>
    </>
  );
}
