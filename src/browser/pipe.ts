/** Speaks with a browser over two pipes: messages of JSON, each ended by a zero byte. */
import type { Readable, Writable } from "node:stream";

/** The shape that Puppeteer asks of a connection. */
export interface Pipe {
  send(message: string): void;
  close(): void;
  onmessage?: (message: string) => void;
  onclose?: () => void;
}

/** Joins the pipe that the browser reads commands from with the one that it answers on. */
export function joinPipes(commands: Writable, answers: Readable): Pipe {
  let parts: Buffer[] = [];
  const pipe: Pipe = {
    send: (message) => {
      if (commands.writable) commands.write(`${message}\0`);
    },
    close: () => {
      commands.end();
      answers.destroy();
    },
  };
  answers.on("data", (chunk: Buffer) => {
    let from = 0;
    for (let end = chunk.indexOf(0); end !== -1; end = chunk.indexOf(0, from)) {
      const message = Buffer.concat([...parts, chunk.subarray(from, end)]).toString("utf8");
      parts = [];
      from = end + 1;
      // Each in a turn of its own, as from a socket: answers must not overtake what they answer.
      setImmediate(() => pipe.onmessage?.(message));
    }
    if (from < chunk.length) parts.push(chunk.subarray(from));
  });
  answers.on("close", () => pipe.onclose?.());
  // A broken pipe means that the browser died; its exit is reported on its own.
  answers.on("error", () => undefined);
  commands.on("error", () => undefined);
  return pipe;
}
