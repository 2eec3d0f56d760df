-- What comes in between the steps, worked out by the domain: twice the most marks that count of
-- one hall in a group (a half is possible), where intervals lie among a group's (ten-thousandths), what a group's
-- places vary by, and the percentiles that are asked for.
--
-- Standard SQL:2003, like all steps: window functions and no dialect, so that the same text runs in every engine (except
-- that `=` on the empty text of a variant must be true, which is false where an empty text is taken for null).
CREATE TABLE cap (grp INTEGER NOT NULL, twice BIGINT NOT NULL);
CREATE TABLE place (grp INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL, place INTEGER NOT NULL);
CREATE TABLE moments (
  grp INTEGER NOT NULL, total DOUBLE PRECISION NOT NULL, mean DOUBLE PRECISION NOT NULL,
  variance DOUBLE PRECISION NOT NULL
);
CREATE TABLE percentile (p INTEGER NOT NULL);
