import type { Metadata, Viewport } from "next";
import localFont from "next/font/local";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import "./globals.css";

const text = localFont({
  src: [
    {
      path: "../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2",
      style: "normal",
      weight: "200 900",
    },
    {
      path: "../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-italic.woff2",
      style: "italic",
      weight: "200 900",
    },
  ],
  variable: "--font-text",
  display: "swap",
});

const greek = localFont({
  src: [
    {
      path: "../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-greek-wght-normal.woff2",
      style: "normal",
      weight: "200 900",
    },
    {
      path: "../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-greek-wght-italic.woff2",
      style: "italic",
      weight: "200 900",
    },
  ],
  variable: "--font-greek",
  display: "swap",
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: "unicode-range", value: "U+0370-03FF" }],
});

export const metadata: Metadata = {
  title: { default: "Setpoint Ledger", template: "%s · Setpoint Ledger" },
  description: "What overcooling an office costs, zone by zone, with the working under every figure.",
};

export const viewport: Viewport = {
  colorScheme: "light dark",
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#f6f7f0" },
    { media: "(prefers-color-scheme: dark)", color: "#141815" },
  ],
};

export default async function RootLayout({ children }: { children: ReactNode }) {
  // Reading the request makes every page dynamic, so that each gets its own script nonce.
  await headers();
  return (
    <html lang="en" className={`${text.variable} ${greek.variable}`}>
      <body>{children}</body>
    </html>
  );
}
