using System.CommandLine;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>The records in order, in words.</summary>
internal static class LogCommand
{
    private static readonly Rows<LogLine> Listing = new("log",
        new("seq", l => l.Seq), new("at", l => l.At), new("by", l => l.By), new("kind", l => l.Kind), new("area", l => l.Area),
        new("worst", l => l.Worst is { } w ? Json.Word(w) : null), new("words", l => l.Words), new("shift", l => l.Shift, InText: false), new("entered", l => l.Entered, InText: false));

    public static Command Make(Shell shell)
    {
        var from = Options.From();
        var to = Options.To();
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("log", $"The records in order: this shift's unless said. {Listing.Keys}") { from, to, json, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var begin = Options.Time(parse, from, desk.Site, desk.Now, mistakes) ?? Calendar.ShiftAt(desk.Site, desk.Now).Start;
            var end = Options.Time(parse, to, desk.Site, desk.Now, mistakes) ?? desk.Now.AddMinutes(1);
            return mistakes.Count > 0
                ? shell.Refuse(mistakes)
                : Listing.Print(shell, parse.GetValue(json), desk.Store.Between(begin, end).Select(r => LogLine.Of(desk, r)), "no record in this span");
        }, asOf));
        return command;
    }
}
