using System.CommandLine;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Facts about checks and what is carried, and what is only something to look at; the use of limits.</summary>
internal static class AuditCommand
{
    private static readonly Rows<AuditFlag> Listing = new("audit",
        new("flag", f => f.Flag), new("shift", f => f.ShiftId), new("at", f => f.At), new("round", f => f.Round), new("point", f => f.Point),
        new("seq", f => f.Seq), new("text", f => f.Text), new("evidence", f => f.Evidence.Count == 0 ? null : f.Evidence));

    private static readonly Rows<LimitRow> Limits = new("limits",
        new("point", l => l.Point), new("limit", l => l.Limit), new("readings", l => l.Readings), new("beyond", l => l.Beyond), new("times", l => l.Times),
        new("hours", l => l.Hours), new("crews", l => l.Crews));

    public static Command Make(Shell shell)
    {
        var flag = Options.Many("--flag", $"Only these, may be repeated: {string.Join(", ", Audit.Flags)}.", "NAME");
        var (from, to, json, asOf) = (Options.From(), Options.To(), Options.Json(), Options.AsOf());
        var command = new Command("audit", $"Missed, late, not taken, corrected, carried, refused, hazards opened and closed: facts. Same as an earlier round, varies less than usual, off the laboratory (by the site's calculations; not with --server): something to look at, with its evidence; not findings about anyone. The last seven days from a shift's start on unless said. {Listing.Keys}") { flag, from, to, json, asOf };
        ServerOptions.AddTo(command);
        command.SetAction(parse => OpenSite.ForLines(shell, parse, (shell, desk) =>
        {
            var wanted = parse.GetValue(flag) ?? [];
            var unknown = wanted.Except(Audit.Flags, StringComparer.Ordinal).Select(f => Mistake.Typed($"there is no flag {f}", string.Join(", ", Audit.Flags))).ToList();
            return unknown.Count > 0
                ? shell.Refuse(unknown)
                : Options.Span(shell, parse, desk, (from, Calendar.ShiftAt(desk.Site, desk.Now.AddDays(-7)).Start), (to, desk.Now), (begin, end) =>
                    Listing.Print(shell, parse.GetValue(json), Audit.Between(desk, begin, end, wanted), "no flag in this span"));
        }, asOf, computes: parse.GetValue(flag) is not { Length: > 0 } flags || flags.Contains("off-laboratory", StringComparer.Ordinal)));
        return command;
    }

    public static Command LimitUse(Shell shell)
    {
        var point = Options.Text("--point", "Only this point.", "TAG");
        var (from, to, json, asOf) = (Options.From(), Options.To(), Options.Json(), Options.AsOf());
        var command = new Command("limits", $"How often each limit was exceeded, for how long, and by crew: the last thirty days unless said. {Limits.Keys}") { point, from, to, json, asOf };
        ServerOptions.AddTo(command);
        command.SetAction(parse => OpenSite.ForLines(shell, parse, (shell, desk) => Options.Span(
            shell, parse, desk, (from, desk.Now.AddDays(-30)), (to, desk.Now), (begin, end) => Limits.Print(
                shell, parse.GetValue(json),
                Handover.LimitUse.Of(desk, begin, end).Where(l => parse.GetValue(point) is not { } tag || l.Point.Equals(tag, StringComparison.OrdinalIgnoreCase)),
                "no reading of a point with limits in this span")), asOf));
        return command;
    }
}
