export { csvOf } from '@/shared/text/csv';
