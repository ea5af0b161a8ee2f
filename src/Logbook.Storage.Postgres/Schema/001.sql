-- The mill-wide collection of records: forwarded by the lines, never edited, read by everybody with the right to.
-- Later steps only add: a program that knows fewer of them goes on to work.

create schema logbook;

do $$
begin
    if not exists (select from pg_roles where rolname = 'logbook_reader') then
        create role logbook_reader nologin;
    end if;
    if not exists (select from pg_roles where rolname = 'logbook_forwarder') then
        create role logbook_forwarder nologin;
    end if;
end $$;

create table logbook.migration (
    number int primary key,
    at     timestamptz not null default now()
);

-- One row for each line that was admitted, with the end of its chain as it is here.
create table logbook.line (
    id       int generated always as identity primary key,
    chain    text not null unique check (chain ~ '^[A-Za-z0-9-]{1,64}$'),
    seq      bigint not null default 0,
    hash     bytea not null default decode(repeat('00', 32), 'hex'),
    received timestamptz
);

-- The canonical bytes, exactly as the line has them; the server computes their hash itself. The columns beside them only find records.
create table logbook.record (
    chain    text not null,
    seq      bigint not null,
    kind     text not null,
    at       timestamptz not null,
    entered  timestamptz not null,
    corrects bigint,
    received timestamptz not null default now(),
    bytes    bytea not null,
    hash     bytea not null generated always as (sha256(bytes)) stored,
    unique (chain, seq)
) partition by list (chain);

create index on logbook.record (at);
create index on logbook.record (corrects) where corrects is not null;

-- What entries and corrections say of points, for queries. Point in capitals; value null when not taken; derived when a calculation
-- gave it; corrects names the entry that a correction puts right: its rows stand beside the entry's, which stay.
create table logbook.reading (
    chain    text not null,
    seq      bigint not null,
    n        int not null,
    point    text not null,
    at       timestamptz not null,
    value    double precision,
    unit     text not null,
    typed    text,
    why      text,
    derived  boolean not null,
    corrects bigint,
    unique (chain, seq, n)
) partition by list (chain);

create index on logbook.reading (point, at);
create index on logbook.reading (point, corrects) where corrects is not null;

-- What follows from a line's records up to one of them, so that nobody replays a long chain. May be deleted at any time.
create table logbook.state (
    chain text not null references logbook.line (chain),
    seq   bigint not null,
    hash  bytea not null,
    fold  text not null,
    bytes bytea not null,
    primary key (chain, fold, seq)
);

-- lz4 is quicker; a server that was built without it keeps its usual compression.
do $$
begin
    alter table logbook.record alter column bytes set compression lz4;
    alter table logbook.state alter column bytes set compression lz4;
exception when feature_not_supported then
    null;
end $$;

-- What arrives must follow what is here: next number, previous hash. Whoever inserts, and by whatever program.
create function logbook.linked() returns trigger language plpgsql security definer set search_path = pg_catalog, pg_temp as $$
declare
    here logbook.line;
    came record;
begin
    select * into here from logbook.line where id = tg_argv[0]::int for update;
    for came in select seq, hash, bytes from arrived loop
        if came.seq <> here.seq + 1
           or position(convert_to(format('"prev":"%s","seq":%s,', encode(here.hash, 'hex'), came.seq), 'UTF8') in came.bytes) = 0
           or position(convert_to(format('"chain":"%s",', here.chain), 'UTF8') in came.bytes) = 0 then
            raise exception using errcode = 'LB001', message =
                format('record %s of %s does not follow record %s that is here', came.seq, here.chain, here.seq);
        end if;
        here.seq := came.seq;
        here.hash := came.hash;
    end loop;
    update logbook.line set seq = here.seq, hash = here.hash, received = now() where id = here.id;
    return null;
end $$;

create function logbook.never() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
begin
    raise exception using errcode = 'LB002', message = 'a record is never changed or deleted';
end $$;

create trigger never before update or delete or truncate on logbook.record execute function logbook.never();
create trigger never before update or delete or truncate on logbook.reading execute function logbook.never();

-- A line may be forwarded once an administrator has admitted it, and by that role alone.
create function logbook.admit(new_chain text, forwarder text) returns void language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
    line int;
    part text;
begin
    insert into logbook.line (chain) values (new_chain) on conflict (chain) do nothing;
    select id into line from logbook.line where chain = new_chain;
    foreach part in array array['record', 'reading'] loop
        if to_regclass(format('logbook.%s_%s', part, line)) is null then
            execute format('create table logbook.%s_%s partition of logbook.%s for values in (%L)', part, line, part, new_chain);
            execute format('create trigger never before update or delete or truncate on logbook.%s_%s execute function logbook.never()', part, line);
            if part = 'record' then
                execute format('create trigger linked after insert on logbook.record_%s referencing new table as arrived for each statement execute function logbook.linked(%s)', line, line);
            end if;
        end if;
    end loop;
    execute format('grant logbook_forwarder to %I', forwarder);
    execute format('grant insert (chain, seq, kind, at, entered, corrects, bytes), select (chain, seq, hash, entered, received) on logbook.record_%s to %I', line, forwarder);
    execute format('grant insert on logbook.reading_%s to %I', line, forwarder);
end $$;

-- Keeps a state, offered by who may forward that line; of the older ones some stay for looks at the past.
create function logbook.keep(of_chain text, at_seq bigint, at_hash bytea, by_fold text, state_bytes bytea) returns void
language plpgsql security definer set search_path = pg_catalog, pg_temp as $$
declare
    line int;
begin
    select id into line from logbook.line where chain = of_chain;
    if line is null or not has_column_privilege(session_user, format('logbook.record_%s', line), 'bytes', 'INSERT') then
        raise exception using errcode = 'insufficient_privilege', message = format('no right to forward %s', of_chain);
    end if;
    insert into logbook.state (chain, seq, hash, fold, bytes) values (of_chain, at_seq, at_hash, by_fold, state_bytes)
        on conflict (chain, fold, seq) do update set hash = excluded.hash, bytes = excluded.bytes;
    delete from logbook.state s where s.chain = of_chain and s.fold = by_fold and s.seq % 4096 <> 0
        and s.seq < (select min(seq) from (select seq from logbook.state where chain = of_chain and fold = by_fold order by seq desc limit 4) newest);
end $$;

revoke all on function logbook.linked(), logbook.never(), logbook.admit(text, text), logbook.keep(text, bigint, bytea, text, bytea) from public;
grant usage on schema logbook to logbook_reader, logbook_forwarder;
grant select on logbook.migration, logbook.line to logbook_reader, logbook_forwarder;
grant select on logbook.record, logbook.reading, logbook.state to logbook_reader;
grant execute on function logbook.keep(text, bigint, bytea, text, bytea) to logbook_forwarder;
