/** Asks back whether work was done that went by on the clock while the client was not on its screen. */
import { useApp } from "./app.ts";

interface AskUnseenProps {
  readonly onAnswer: (did: boolean) => void;
}

export function AskUnseen({ onAnswer }: AskUnseenProps) {
  const { say } = useApp();
  return (
    <div class="notice" role="alert">
      <p>{say("unseen.asks")}</p>
      <p class="buttons">
        <button type="button" class="button" onClick={() => onAnswer(true)}>
          {say("unseen.yes")}
        </button>
        <button type="button" class="button" onClick={() => onAnswer(false)}>
          {say("unseen.no")}
        </button>
      </p>
    </div>
  );
}
