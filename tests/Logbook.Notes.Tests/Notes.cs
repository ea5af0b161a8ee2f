using CsCheck;
using Logbook.Handover;

namespace Logbook.Notes.Tests;

/// <summary>Notes for tests: what matters is the form, so the words may be anything.</summary>
internal static class Notes
{
    public static readonly string Shipped = Path.Combine(AppContext.BaseDirectory, "templates", "notes");

    public static HandoverNote With(string text, params NoteTrend[] trends) => new()
    {
        Site = text,
        ShiftId = "2026-11-24-N-C",
        Period = text,
        DrawnAt = text,
        TakeLonger = [text],
        Sections = [new NoteSection("can-hurt", "CAN HURT", [new NoteLine("locked", text), new NoteLine(text, text)]) { Beside = text }],
        Cautions = [new NoteCaution(text, text, text, text, text, text, Draft: true)],
        Trends = trends,
        Records = 12,
        Head = new string('7', 64),
    };

    public static NoteTrend Trend(params double[] values) => Trend("degC", values);

    public static NoteTrend Trend(string unit, params double[] values)
    {
        var start = new DateTimeOffset(2026, 11, 24, 19, 0, 0, TimeSpan.FromHours(-5));
        return new NoteTrend("SL-T1", "Slaker temperature", unit, [.. values.Select((v, i) => (start.AddHours(i), v))], 98, 102.6, null, 103.2);
    }

    public static string Write(HandoverNote note, NoteFormat format, params string[] folders) => Write(note, NoteKind.Handover, format, folders);

    public static string Write(HandoverNote note, NoteKind kind, NoteFormat format, params string[] folders) => NoteWriter.Write(note, kind, format, [.. folders, Shipped]);

    public static string Write(WeekNote note, NoteFormat format, params string[] folders) => NoteWriter.Write(note, format, [.. folders, Shipped]);

    /// <summary>Any text, with more of what could break a format than chance would bring.</summary>
    public static readonly Gen<string> Hostile = Gen.OneOf(
        Gen.String, Gen.String[Gen.Char[' ', '~'], 0, 300], Gen.String[Gen.Char["<>&\"'`*_[]()#|\\\n\r\t\u001b\u202e\u2028 a"], 0, 120])
        .Select(text => text.Length == 0 ? "-" : text);
}
