/** Why an exercise is only offered to be left out: another one, or the same, was stopped today for its pain. */
import type { SessionBout } from "../../compose/session-model.ts";
import { useApp } from "./app.ts";

interface LeaveItProps {
  readonly bout: SessionBout;
  readonly stopped: SessionBout;
}

export function LeaveIt({ bout, stopped }: LeaveItProps) {
  const { say } = useApp();
  const same = stopped.card === bout.card;
  return (
    <div class="advice advice-stop" role="alert">
      <p class="advice-head">{say("stopped.leave")}</p>
      <p>{say(same ? "stopped.same" : "stopped.tissue", { exercise: stopped.title })}</p>
      <p>
        <a href="#/stop">{say("advice.signs")}</a>
      </p>
    </div>
  );
}
