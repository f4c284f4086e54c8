/** Which screen the address asks for; the part behind the # is all there is of an address. */

export type Route =
  | { readonly screen: "today" | "diary" | "bring" | "stop" }
  | { readonly screen: "booklet"; readonly anchor: string | undefined }
  | { readonly screen: "session" | "write" | "look"; readonly key: string };

/** A route from an address's fragment: `#/diary`, `#/session/2026-12-02-evening`, or a place in the booklet. */
export function routeOf(hash: string): Route {
  const text = hash.replace(/^#/, "");
  if (text === "") return { screen: "today" };
  if (!text.startsWith("/")) return { screen: "booklet", anchor: text };
  const [, screen, name = ""] = text.split("/");
  switch (screen) {
    case "diary":
    case "bring":
    case "stop":
      return { screen };
    case "booklet":
      return { screen, anchor: undefined };
    case "session":
    case "write":
    case "look":
      return { screen, key: name.replace(/-(morning|midday|evening)$/, " $1") };
    default:
      return { screen: "today" };
  }
}

/** The fragment of a route. */
export function hashOf(route: Route): string {
  if (route.screen === "booklet" && route.anchor !== undefined) return `#${route.anchor}`;
  if ("key" in route) return `#/${route.screen}/${route.key.replace(" ", "-")}`;
  return `#/${route.screen}`;
}
