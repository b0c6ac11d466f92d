// Asks for a quote and orders it, through the client that openapi-typescript and openapi-fetch make of our description.
import createClient from "openapi-fetch";
import type { components, paths } from "./api.js";

const [baseUrl, key] = process.argv.slice(2);
const shop = createClient<paths>({ baseUrl, headers: { Authorization: `Bearer ${key}` } });

const design: components["schemas"]["DesignBody"] = {
  shelter: { kind: "dome", class: 1, frequency: 2, cut: "1/2", size: { height: "6 ft" } },
  hubSystem: "ring-100",
  strutStock: "pvc-33",
};
const quote = await shop.POST("/api/quotes", { params: {}, body: { design, quantity: 2 } });
if (!quote.data) throw new Error(quote.error?.detail);

const order = await shop.POST("/api/orders", {
  params: { header: { "Idempotency-Key": "from-typescript-1" } },
  body: { quoteId: quote.data.id, customer: { name: "A. Customer" }, whenShort: "wait" },
});
if (!order.data) throw new Error(order.error?.detail);

const picklist = await shop.GET("/api/orders/{id}/picklist", { params: { path: { id: order.data.id } } });
const refused = await shop.GET("/api/orders/{id}", { params: { path: { id: "01970000-0000-7000-8000-000000000000" } } });
console.log(JSON.stringify({ number: order.data.number, quantity: order.data.quantity, lines: picklist.data?.lines.length, code: refused.error?.code }));
