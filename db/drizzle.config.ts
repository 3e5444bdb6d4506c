import { defineConfig } from "drizzle-kit";

/** Migrations of app.db. The trend store has its own, two-table schema in `db/trends`. */
export default defineConfig({
  dialect: "sqlite",
  casing: "snake_case",
  schema: "./db/schema/*.ts",
  out: "./db/migrations",
});
