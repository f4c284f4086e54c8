/** A session of a coming day, to look at only: it is neither begun nor written down from here. */
import { findSession } from "../../diary/entry.ts";
import { useApp } from "./app.ts";
import { Exercises } from "./exercises.tsx";
import { Heading } from "./parts.tsx";

export function LookScreen({ sessionName }: { readonly sessionName: string }) {
  const { say, names, sessions, dateOf, go } = useApp();
  const session = findSession(sessions, sessionName);
  if (session === undefined) return <Heading>{say("write.gone")}</Heading>;
  return (
    <>
      <Heading>{names.long(dateOf(session))}</Heading>
      <p class="notice">{say("look.how")}</p>
      <h2>
        {say("today.session", { part: say(`part.${session.part}`), minutes: session.minutes })}
      </h2>
      <Exercises session={session} short={false} />
      <button type="button" class="button main" onClick={() => go({ screen: "diary" })}>
        {say("look.back")}
      </button>
    </>
  );
}
