/** Why a session is not offered to be started, and when it is. */
import type { Hold, Reason } from "../day/hold.ts";
import { type App, useApp } from "./app.ts";

export function HoldNotice({ hold }: { readonly hold: Hold }) {
  const app = useApp();
  const { say, names, dateOf } = app;
  const { from } = hold;
  return (
    <div class="notice hold">
      <p>{whyOf(hold, app)}</p>
      <p>
        {from
          ? say("hold.from", { day: names.weekday(dateOf(from)), part: say(`part.${from.part}`) })
          : say("hold.leave")}
      </p>
    </div>
  );
}

function whyOf(reason: Reason, { say, names, dateOf }: App): string {
  switch (reason.kind) {
    case "rest":
      return say("hold.rest", { exercise: reason.title });
    case "next": {
      const part = say(`part.${reason.session.part}`);
      return say("hold.next", { day: names.weekday(dateOf(reason.session)), part });
    }
    default:
      return say(`hold.${reason.kind}`, { event: reason.event, day: names.weekday(reason.date) });
  }
}
