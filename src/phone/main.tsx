/** Starts the companion in the booklet's file. Without it the file is the booklet alone. */
// before anything else runs
import "./device/closed.ts";
import { render } from "preact";
import type { PhoneData } from "./day/data.ts";
import { Root } from "./screens/root.tsx";
import { otherDiaries } from "./store/others.ts";
import { deviceStorage } from "./store/shelf.ts";
import { openStore } from "./store/store.ts";

const place = document.getElementById("phone");
const data = document.getElementById("booklet-data")?.textContent;
if (place && data) {
  const booklet: PhoneData = JSON.parse(data);
  const storage = deviceStorage(window, "localStorage");
  const store = openStore(storage, booklet, deviceStorage(window, "sessionStorage"));
  const others = otherDiaries(storage, booklet);
  place.hidden = false;
  document.documentElement.classList.add("on-phone");
  render(<Root data={booklet} store={store} others={others} />, place);
}
