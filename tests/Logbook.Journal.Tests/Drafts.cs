using CsCheck;
using Logbook.Journal;

namespace Logbook.Journal.Tests;

/// <summary>Records of an invented line, by chance or with what a test cares about.</summary>
internal static class Drafts
{
    public const string Line = "line-1";

    public static readonly DateTimeOffset Morning = new(2026, 10, 31, 8, 0, 0, TimeSpan.FromHours(-4));

    private static readonly Gen<string> Text = Gen.String[Gen.Char.Where(c => !char.IsSurrogate(c)), 0, 12];

    private static readonly Gen<double> Number = Gen.Double.Where(double.IsFinite);

    private static readonly Gen<DateTimeOffset> Time = Gen.Select(
        Gen.Long[0, 4_000_000_000_000], Gen.Int[-14 * 60, 14 * 60],
        (ms, offset) => DateTimeOffset.FromUnixTimeMilliseconds(ms).ToOffset(TimeSpan.FromMinutes(offset)));

    private static readonly Gen<Reading> AnyReading = Gen.Select(Text, Text.Null(), Number.Nullable(), Time, Text.Null(),
        (point, typed, value, at, why) => new Reading { Point = point, Typed = typed, Value = value, Unit = "g/L Na2O", At = at, Why = why, Second = typed });

    private static readonly Gen<Result> AnyResult = Gen.Select(Text, Text.Null(), Number, Number.Nullable(),
        (name, point, value, u) => new Result(name, "causticity", point, value, "%", u, u is null ? null : "burette and acid", "Causticizing 0.1.0"));

    private static readonly Gen<Finding> AnyFinding = Gen.Select(Gen.Enum<Level>(), Text, Text.Null(), Text.Array[0, 3],
        (level, code, point, evidence) => new Finding(level, code, point, code, evidence));

    private static readonly Gen<Signed> AnySigned = Gen.Select(Gen.Int[0, 2].Select(i => new[] { "pin", "witness", "none" }[i]), Text, Text.Null(), Gen.Long[1, 99].Nullable(),
        (how, means, witness, reset) => new Signed(how, means, witness, reset));

    private static readonly Gen<FrozenNote> AnyNote = Gen.Select(Text, Text.Array[0, 2], Gen.Select(Text, Text).Array[0, 3],
        (text, reasons, lines) => new FrozenNote(
            "2026-10-31-D-B", text, text, reasons, [new("can-hurt", "CAN HURT", text, [.. lines.Select(l => new FrozenLine(l.Item1, l.Item2))])],
            [new(text, text, text, text, text, text, Draft: true)]));

    private static readonly Gen<RecordBody> Step = Gen.OneOf<RecordBody>(
        Gen.Select(Gen.Dictionary(Text, Text)[0, 3], Text.Array[0, 2], AnyNote, AnySigned,
            (declared, words, note, signed) => (RecordBody)new HandoverPrepared(declared, words, words, note, "ab", signed)),
        Gen.Select(Text, Gen.Long[1, 99], (page, upTo) => (RecordBody)new HandoverSeen(page, upTo)),
        Gen.Select(Text, Gen.Long[1, 99].Nullable(), (text, about) => (RecordBody)new HandoverQuestion(text, about)),
        Gen.Select(Gen.Long[1, 99].Nullable(), Text, Gen.Bool, (question, text, aloud) => (RecordBody)new HandoverAnswer(question, text, "op1", aloud)),
        Gen.Select(Text.Null(), Gen.Long[1, 99].Nullable(), Text.Array[1, 3], AnyNote, AnySigned,
            (text, prepared, first, note, signed) => (RecordBody)new HandoverAccepted(text, prepared, first, text, first, text, note, "ab", signed)),
        Gen.Select(Text.Null(), Text, AnySigned, (from, words, signed) => (RecordBody)new HandoverRelief("short", from, words, signed)),
        Text.Select(why => (RecordBody)new HandoverRefused(why)), Text.Select(why => (RecordBody)new HandoverNotYet(why)), Text.Select(why => (RecordBody)new HandoverContinued(why)),
        Gen.Select(Gen.Long[1, 99], Text, AnySigned, (target, why, signed) => (RecordBody)new HandoverCountersigned(target, why, signed)),
        Gen.Select(Text, Gen.Long[1, 99].Nullable(), Text.Null(), (code, target, why) => (RecordBody)new PersonChanged(code, "closed", target, why)));

    private static readonly Gen<RecordBody> Body = Gen.OneOf<RecordBody>(
        Step,
        Gen.Select(AnyReading.Array[0, 4], AnyResult.Array[0, 3], AnyFinding.Array[0, 3], Time.Nullable(),
            (readings, results, findings, walk) => (RecordBody)new Entry { WalkStart = walk, Readings = readings, Results = results, Findings = findings }),
        Gen.Select(Gen.Long[1, 99], AnyReading.Array[1, 3], AnyResult.Array[0, 2], AnyFinding.Array[0, 2],
            (target, readings, results, findings) => (RecordBody)Correction.Of(target, readings, "misread", results, findings)),
        Gen.Select(Text, Text.Null(), Gen.Long[1, 99].Nullable(), (text, on, related) => (RecordBody)new Remark(text, on, related)),
        Gen.Select(Text, Time, (text, since) => (RecordBody)new EquipmentStateChanged("slaker", text, since, Why: null)),
        Gen.Select(Gen.Dictionary(Text, Text)[0, 3], Time.Nullable(),
            (fields, until) => (RecordBody)new Carry("permit", "slaker", "inside", until, Owner: null, fields)),
        Gen.Select(Gen.Dictionary(Text, Text)[0, 3], Text, (files, why) => (RecordBody)new SiteAdopted(files, why)),
        Gen.Select(Gen.Long[1, 99], Text.Null(), (id, step) => (RecordBody)new CarryClosed(id, "done") { Lock = step }));

    public static readonly Gen<RecordDraft> Any = Gen.Select(Body, Time, Time, Text,
        (body, at, entered, by) => new RecordDraft(body, Line, at, entered, "2026-10-31-D-B", by, "control-room:tty1"));

    public static RecordDraft Of(RecordBody body, DateTimeOffset? at = null) =>
        new(body, Line, at ?? Morning, at ?? Morning, "2026-10-31-D-B", "op1", "control-room:tty1");

    /// <summary>An entry of readings <c>TAG=VALUE</c>, all read at one time.</summary>
    public static RecordDraft Entry(DateTimeOffset at, params string[] readings) =>
        Of(new Entry { Round = "hourly", Readings = [.. readings.Select(text => Read(text, at))] }, at);

    public static Reading Read(string text, DateTimeOffset at)
    {
        var parts = text.Split('=');
        return parts[1] is "-"
            ? new() { Point = parts[0], Unit = "degC", At = at, Why = "no time" }
            : new() { Point = parts[0], Typed = parts[1], Value = double.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture), Unit = "degC", At = at };
    }

    public static Result Derived(string point, double value) => new("wl", "causticity", point, value, "%", U: null, Covers: null, "Causticizing 0.1.0");

    public static Finding Found(string code, string? point = null) => new(Level.Watch, code, point, code, []);
}
