/** Asks back once about an amount that is more likely a slip, before it is written. */

import { inUnit } from "../../units/mass.ts";
import type { Odd } from "../day/odd.ts";
import { useApp } from "./app.ts";

interface AskBackProps {
  readonly odd: Odd;
  readonly onAnswer: (right: boolean) => void;
}

export function AskBack({ odd: { amount, kind, wrote, planned }, onAnswer }: AskBackProps) {
  const { say, names, data } = useApp();
  const shown = (value: number) =>
    names.number(amount === "kg" ? inUnit(value, data.units) : value);
  const unit = amount === "kg" ? data.units : amount;
  return (
    <div class="notice" role="alert">
      <p>{say(`ask.${kind}.${unit}`, { wrote: shown(wrote), planned: shown(planned) })}</p>
      <p class="buttons">
        <button type="button" class="button" onClick={() => onAnswer(true)}>
          {say("ask.yes")}
        </button>
        <button type="button" class="button" onClick={() => onAnswer(false)}>
          {say("ask.no")}
        </button>
      </p>
    </div>
  );
}
