using System.CommandLine;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>The readings of a point, or its derived values.</summary>
internal static class ListCommand
{
    private static readonly Rows<ListedValue> Listing = new("list",
        new("point", v => v.Value.Point), new("at", v => v.Value.At), new("value", v => v.Value.Value), new("words", v => v.Words, WhenAny: true), new("unit", v => v.Value.Unit),
        new("typed", v => v.Value.Typed), new("why", v => v.Value.Why), new("round", v => v.Value.Round), new("by", v => v.Value.By), new("seq", v => v.Value.Seq),
        new("corrected_by", v => v.Value.CorrectedBy), new("first", v => v.First?.Value, InText: false), new("put_right", v => v.PutRight, WhenAny: true));

    public static Command Make(Shell shell)
    {
        var tag = new Argument<string>("POINT");
        var from = Options.From();
        var to = Options.To();
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("list", $"Values of a point: the last 24 hours unless said. {Listing.Keys}") { tag, from, to, json, asOf };
        ServerOptions.AddTo(command);
        command.SetAction(parse => OpenSite.ForLines(shell, parse, (shell, desk) =>
        {
            var mistakes = new List<Mistake>();
            var point = desk.Site.FindPoint(parse.GetValue(tag)!);
            if (point is null)
            {
                mistakes.Add(Mistake.Typed($"there is no point {parse.GetValue(tag)}", Spelling.Accepted(parse.GetValue(tag)!, [.. desk.Site.Points.Select(p => p.Tag)])));
            }

            var begin = Options.Time(parse, from, desk.Site, desk.Now, mistakes) ?? desk.Now.AddHours(-24);
            var end = Options.Time(parse, to, desk.Site, desk.Now, mistakes) ?? desk.Now.AddMinutes(1);
            return mistakes.Count > 0
                ? shell.Refuse(mistakes)
                : Listing.Print(shell, parse.GetValue(json), desk.Store.Series(point!.Tag, begin, end).Select(v => ListedValue.Of(desk, point, v)), $"no value of {point!.Tag} in this span");
        }, asOf));
        return command;
    }
}
