/** Asked once where a diary of the same plan was kept for another reference: is it the same person? */
import { useApp } from "./app.ts";

interface SamePersonProps {
  /** The reference for which it was kept. */
  readonly other: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
}

export function SamePerson({ other, onYes, onNo }: SamePersonProps) {
  const { say, data } = useApp();
  return (
    <section class="session">
      <p>{say("same.asks", { client: data.client, other })}</p>
      <button type="button" class="button main" onClick={onYes}>
        {say("same.yes")}
      </button>
      <button type="button" class="button" onClick={onNo}>
        {say("same.no")}
      </button>
      <p class="quiet">{say("same.nothing-lost")}</p>
    </section>
  );
}
