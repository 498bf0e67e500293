'use client';
export { send, type Answer } from '@/app/_ui/send';
