using System.CommandLine;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Facts about checks: missed, late, not taken, corrected, carried too long.</summary>
internal static class AuditCommand
{
    private static readonly string[] Flags = ["missed", "late", "not-taken", "corrected", "carried-too-long"];

    private static readonly Rows<AuditFlag> Listing = new("audit",
        new("flag", f => f.Flag), new("shift", f => f.ShiftId), new("at", f => f.At), new("round", f => f.Round), new("point", f => f.Point),
        new("seq", f => f.Seq), new("text", f => f.Text));

    public static Command Make(Shell shell)
    {
        var flag = Options.Many("--flag", $"Only these, may be repeated: {string.Join(", ", Flags)}.", "NAME");
        var from = Options.From();
        var to = Options.To();
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("audit", $"Checks missed, late, not taken or corrected, and items carried too long: the last seven days unless said. Facts, not findings about anyone. {Listing.Keys}") { flag, from, to, json, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var wanted = parse.GetValue(flag) ?? [];
            mistakes.AddRange(wanted.Except(Flags, StringComparer.Ordinal).Select(f => Mistake.Typed($"there is no flag {f}", string.Join(", ", Flags))));
            var begin = Options.Time(parse, from, desk.Site, desk.Now, mistakes) ?? desk.Now.AddDays(-7);
            var end = Options.Time(parse, to, desk.Site, desk.Now, mistakes) ?? desk.Now;
            if (mistakes.Count > 0)
            {
                return shell.Refuse(mistakes);
            }

            var flags = Audit.Between(desk, begin, end).Where(f => wanted.Length == 0 || wanted.Contains(f.Flag, StringComparer.Ordinal));
            return Listing.Print(shell, parse.GetValue(json), flags, "no flag in this span");
        }, asOf));
        return command;
    }
}
