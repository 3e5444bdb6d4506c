/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  outputFileTracingExcludes: { "*": ["data/**"] },
  // A second folder lets the browser tests build beside a running development server.
  distDir: process.env.NEXT_DIST_DIR ?? ".next",
};

export default config;
