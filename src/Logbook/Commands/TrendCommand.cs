using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Checks.Charts;
using Logbook.Handover;
using Logbook.Notes;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Commands;

/// <summary>Charts and trend of one point, in words.</summary>
internal static class TrendCommand
{
    public static Command Make(Shell shell)
    {
        var tag = new Argument<string>("POINT");
        var from = Options.From();
        var to = Options.To();
        var svg = Options.Text("--svg", "Also draw it into a new SVG file.", "F");
        var target = new Option<double?>("--target") { Description = "Centre of the charts; the baseline's mean unless given.", HelpName = "VALUE" };
        var sigma = new Option<double?>("--sigma") { Description = "Sigma of the charts; from the baseline unless given.", HelpName = "VALUE" };
        var baseline = Options.Text("--baseline-to", "Readings up to then make the baseline; all unless given.", "TIME");
        var beside = new Option<bool>("--beside") { Description = "Also what else moved when this point changed its level, the most first." };
        var json = Options.Json();
        var command = new Command("trend", "Control chart, run rules, drift and time to a limit of a point: the last seven days unless said. With --json: point, unit, n, mean, sd, lag1, sigma_mr, lcl, ucl, limits_from, signals, cusum, ewma, slope, hours_to_limit, points; with --beside: since, and beside, an array of objects with point, before, after, unit, spreads.")
        {
            tag, from, to, svg, target, sigma, baseline, beside, json,
        };
        ServerOptions.AddTo(command);
        command.SetAction(parse => OpenSite.ForLines(shell, parse, (shell, desk) =>
        {
            var mistakes = new List<Mistake>();
            var point = desk.Site.FindPoint(parse.GetValue(tag)!);
            if (point is null)
            {
                mistakes.Add(Mistake.Typed($"there is no point {parse.GetValue(tag)}", Spelling.Accepted(parse.GetValue(tag)!, [.. desk.Site.Points.Select(p => p.Tag)])));
            }

            DateTimeOffset? Time(Option<string?> option) => Options.Time(parse, option, desk.Site, desk.Now, mistakes);
            var (begin, end, fixedTo) = (Time(from) ?? desk.Now.AddDays(-7), Time(to) ?? desk.Now.AddMinutes(1), Time(baseline));
            if (mistakes.Count > 0)
            {
                return shell.Refuse(mistakes);
            }

            var options = new TrendOptions { Target = parse.GetValue(target), Sigma = parse.GetValue(sigma), BaselineTo = fixedTo };
            var trend = Trend.Of(point!, desk.Store.Series(point!.Tag, begin, end), options);
            var written = parse.GetValue(svg) is { } file ? NewFile.Write(shell, file, Picture(desk, point, trend)) : ExitCode.Done;
            return written == ExitCode.Done ? Print(shell, parse.GetValue(json), trend, parse.GetValue(beside) && trend.N > 1 ? Beside.Since(trend) : null, at => Moves(desk, point, begin, end, at)) : written;
        }));
        return command;
    }

    private static IReadOnlyList<TrendPoint> Series(Desk desk, Point point, DateTimeOffset from, DateTimeOffset to) => [.. Trend.Points(desk.Store.Series(point.Tag, from, to))];

    private static IReadOnlyList<BesideMove> Moves(Desk desk, Point point, DateTimeOffset from, DateTimeOffset to, DateTimeOffset since) =>
    [
        .. desk.Site.Points.Where(p => p.Choices.Count == 0 && !p.Tag.Equals(point.Tag, StringComparison.OrdinalIgnoreCase))
            .Select(p => Beside.Of(p.Tag, p.Unit.Name, Series(desk, p, from, to), since, p.Resolution ?? 0)).OfType<BesideMove>().OrderByDescending(m => Math.Abs(m.Spreads)),
    ];

    private static string Picture(Desk desk, Point point, TrendResult trend) => TrendPicture.Of(new NoteTrend(
        point.Tag, point.Description, point.Unit.Name, [.. trend.Points.Select(p => (Calendar.ToSite(desk.Site, p.At), p.Value))],
        point.Limits.WatchLow, point.Limits.WatchHigh, point.Limits.UrgentLow, point.Limits.UrgentHigh));

    private static int Print(Shell shell, bool json, TrendResult trend, (DateTimeOffset At, bool Found)? since, Func<DateTimeOffset, IReadOnlyList<BesideMove>> beside)
    {
        var moves = since is { } at ? beside(at.At) : [];
        if (json)
        {
            var answer = Object(trend);
            if (since is { } when)
            {
                answer["since"] = Json.Time(when.At);
                answer["beside"] = new JsonArray([.. moves.Select(m => new JsonObject { ["point"] = m.Point, ["before"] = m.Before, ["after"] = m.After, ["unit"] = m.Unit, ["spreads"] = m.Spreads })]);
            }

            shell.Out.WriteLine(Json.Text(answer));
            return ExitCode.Done;
        }

        foreach (var line in trend.Words)
        {
            shell.Out.WriteLine(line);
        }

        if (since is { } change)
        {
            var time = change.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
            shell.Out.WriteLine(change.Found ? $"before and after {time}, when it changed, also moved (together says nothing of cause):" : $"no change of its level is shown; before and after the middle, {time}, also moved (together says nothing of cause):");
            return Listing.Print(shell, json: false, moves, "no other point moved more than three times its usual spread");
        }

        return ExitCode.Done;
    }

    private static readonly Rows<BesideMove> Listing = new("beside",
        new("point", m => m.Point), new("before", m => m.Before), new("after", m => m.After), new("unit", m => m.Unit), new("spreads", m => Math.Round(m.Spreads, 1)));

    private static JsonObject Object(TrendResult trend) => new JsonObject { ["point"] = trend.Point, ["unit"] = trend.Unit, ["n"] = trend.N }
        .AddIfPresent("mean", trend.Mean).AddIfPresent("sd", trend.Sd).AddIfPresent("lag1", trend.Lag1).AddIfPresent("sigma_mr", trend.SigmaMr)
        .AddIfPresent("lcl", trend.Lcl).AddIfPresent("ucl", trend.Ucl).AddIfPresent("limits_from", trend.LimitsFrom)
        .AddIfPresent("signals", new JsonArray([.. trend.Signals.Select(s => new JsonObject { ["rule"] = s.Rule, ["index"] = s.Index, ["at"] = Json.Time(s.At) })]))
        .AddIfPresent("cusum", trend.Cusum is not { } c ? null : new JsonObject { ["k"] = c.K, ["h"] = c.H }.AddIfPresent("signal_index", c.SignalIndex).AddIfPresent("start_index", c.StartIndex))
        .AddIfPresent("ewma", trend.Ewma is not { } e ? null : new JsonObject { ["lambda"] = e.Lambda, ["last"] = e.Last, ["lcl"] = e.Lcl, ["ucl"] = e.Ucl })
        .AddIfPresent("slope", trend.Slope is not { } s ? null : new JsonObject { ["per_hour"] = s.PerHour }.AddIfPresent("low", s.Low).AddIfPresent("high", s.High).AddIfPresent("p", s.P))
        .AddIfPresent("hours_to_limit", trend.HoursToLimit is not { } h ? null : new JsonObject { ["limit"] = h.Limit }.AddIfPresent("value", h.Value).AddIfPresent("low", h.Low).AddIfPresent("high", h.High))
        .AddIfPresent("points", new JsonArray([.. trend.Points.Select(p => new JsonObject { ["at"] = Json.Time(p.At), ["value"] = p.Value, ["seq"] = p.Seq })]));
}
