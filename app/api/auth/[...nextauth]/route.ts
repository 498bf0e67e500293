import NextAuth from 'next-auth';
import type { NextRequest } from 'next/server';
import { authOptions } from '@/lib/http/next-auth';

type Context = { params: Promise<{ nextauth: string[] }> };

const handler = (request: NextRequest, context: Context): Promise<Response> =>
  NextAuth(request, context, authOptions()) as Promise<Response>;

export { handler as GET, handler as POST };
