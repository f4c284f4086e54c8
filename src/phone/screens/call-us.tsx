/** "Call us today": it stays until the client has called, and nothing of the program is offered meanwhile. */
import { type DueCall, withCall } from "../day/call.ts";
import { writtenAt } from "../day/entries.ts";
import { useApp } from "./app.ts";

/** Why to call, the number to tap, and that it was done. */
export function CallUs({ call }: { readonly call: DueCall }) {
  const { say, data, settings, act } = useApp();
  const called = () => {
    const calls = withCall(settings.calls, call, writtenAt(new Date()), data.booklet);
    act({ settings: { calls } }, say("call.called-kept"));
  };
  return (
    <div class="advice advice-call" role="alert">
      <p class="advice-head">{say("advice.call")}</p>
      {call.says.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p>{say("call.wait")}</p>
      <p>
        <a class="button main" href={data.clinic.phoneLink}>
          {say("advice.phone", { phone: data.clinic.phone })}
        </a>
      </p>
      <p>
        <button type="button" class="button" onClick={called}>
          {say("call.called")}
        </button>
      </p>
      <p>
        <a href="#/stop">{say("advice.signs")}</a>
      </p>
    </div>
  );
}
