export { csvOf, plainCsvOf } from '@/shared/text/csv';
