using System.Globalization;
using System.Text;
using Logbook.Handover;

namespace Logbook.Notes;

/// <summary>
/// A trend as SVG: values as dots and a line that breaks where readings are missing, limits as dashed lines that are named
/// in words, times and values at the axes. Black on white, no script, no font of its own.
/// </summary>
public static class TrendPicture
{
    private const double Width = 640, Height = 190, Left = 56, Right = 140, Top = 26, Bottom = 26;

    public static string Of(NoteTrend trend)
    {
        var scale = Scale.Of(trend);
        var id = "t-" + string.Concat(trend.Point.Where(char.IsAsciiLetterOrDigit));
        var svg = new StringBuilder();
        Add(svg, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\" role=\"img\" aria-labelledby=\"{id}-t {id}-d\">\n");
        Add(svg, $"<title id=\"{id}-t\">{Escape.Html(trend.Point)} over time</title><desc id=\"{id}-d\">{Escape.Html(TrendWords.Of(trend))}</desc>\n");
        Add(svg, $"<text x=\"{Left}\" y=\"14\" font-weight=\"bold\">{Escape.Html($"{trend.Point} {trend.Title}, {trend.Unit}")}</text>\n");
        Add(svg, $"<rect x=\"{Left}\" y=\"{Top}\" width=\"{Width - Left - Right}\" height=\"{Height - Top - Bottom}\" fill=\"none\" stroke=\"#777\"/>\n");
        Axes(svg, trend, scale);
        Limits(svg, trend, scale);
        Values(svg, trend, scale);
        return svg.Append("</svg>").ToString();
    }

    private static void Axes(StringBuilder svg, NoteTrend trend, Scale scale)
    {
        foreach (var value in new[] { scale.Low, (scale.Low + scale.High) / 2, scale.High })
        {
            Add(svg, $"<text x=\"{Left - 5}\" y=\"{scale.Y(value) + 4:0.#}\" text-anchor=\"end\">{TrendWords.Number(Math.Round(value, scale.Decimals))}</text>\n");
        }

        foreach (var at in new[] { trend.Values[0].At, trend.Values[^1].At }.Distinct())
        {
            Add(svg, $"<text x=\"{scale.X(at):0.#}\" y=\"{Height - 8}\" text-anchor=\"middle\">{TrendWords.Clock(trend, at)}</text>\n");
        }
    }

    private static void Limits(StringBuilder svg, NoteTrend trend, Scale scale)
    {
        (string Name, double? Value, string Dashes)[] limits =
        [
            ("urgent high", trend.UrgentHigh, "2 3"), ("watch high", trend.WatchHigh, "8 4"),
            ("watch low", trend.WatchLow, "8 4"), ("urgent low", trend.UrgentLow, "2 3"),
        ];
        var labelAt = double.NegativeInfinity;
        foreach (var (name, limit, dashes) in limits)
        {
            if (limit is not { } value)
            {
                continue;
            }

            // Beyond the picture it is named at the edge, or a reader would take its absence for there being none.
            var y = Math.Clamp(scale.Y(value), Top, Height - Bottom);
            var beyond = value > scale.High ? ", above" : value < scale.Low ? ", below" : "";
            if (beyond.Length == 0)
            {
                Add(svg, $"<line x1=\"{Left}\" x2=\"{Width - Right}\" y1=\"{y:0.#}\" y2=\"{y:0.#}\" stroke=\"#000\" stroke-dasharray=\"{dashes}\"/>");
            }

            labelAt = Math.Max(y + 4, labelAt + 12);
            Add(svg, $"<text x=\"{Width - Right + 5}\" y=\"{labelAt:0.#}\">{name} {TrendWords.Number(value)}{beyond}</text>\n");
        }
    }

    private static void Values(StringBuilder svg, NoteTrend trend, Scale scale)
    {
        foreach (var run in Runs(trend.Values))
        {
            var points = run.Select(v => string.Create(CultureInfo.InvariantCulture, $"{scale.X(v.At):0.#},{scale.Y(v.Value):0.#}"));
            Add(svg, $"<polyline points=\"{string.Join(' ', points)}\" fill=\"none\" stroke=\"#000\" stroke-width=\"1.5\"/>\n");
        }

        foreach (var (at, value) in trend.Values)
        {
            Add(svg, $"<circle cx=\"{scale.X(at):0.#}\" cy=\"{scale.Y(value):0.#}\" r=\"2.5\"/>");
        }

        svg.Append('\n');
    }

    /// <summary>The line breaks where readings are missing: more than two and a half times the usual distance.</summary>
    private static IEnumerable<List<(DateTimeOffset At, double Value)>> Runs(IReadOnlyList<(DateTimeOffset At, double Value)> values)
    {
        var gaps = values.Zip(values.Skip(1), (a, b) => b.At - a.At).Order().ToList();
        var usual = gaps.Count == 0 ? TimeSpan.Zero : gaps[gaps.Count / 2];
        List<(DateTimeOffset At, double Value)> run = [values[0]];
        foreach (var (before, value) in values.Zip(values.Skip(1)))
        {
            if (value.At - before.At > 2.5 * usual)
            {
                yield return run;
                run = [];
            }

            run.Add(value);
        }

        yield return run;
    }

    private static void Add(StringBuilder svg, FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture));

    /// <summary>From values and times to places. Limits widen it while the values still fill a third of the height.</summary>
    private sealed record Scale(DateTimeOffset From, double Hours, double Low, double High)
    {
        public static Scale Of(NoteTrend trend)
        {
            var (low, high) = (trend.Values.Min(v => v.Value), trend.Values.Max(v => v.Value));
            var room = Math.Max(high - low, Math.Max(Math.Abs(high), 1) * 0.002);
            double?[] limits = [trend.WatchLow, trend.WatchHigh, trend.UrgentLow, trend.UrgentHigh];
            foreach (var limit in limits.OfType<double>().Where(l => l >= low - room && l <= high + room).ToList())
            {
                (low, high) = (Math.Min(low, limit), Math.Max(high, limit));
            }

            var from = trend.Values[0].At;
            return new Scale(from, Math.Max((trend.Values[^1].At - from).TotalHours, 1e-6), low - (0.08 * room), high + (0.08 * room));
        }

        /// <summary>Decimals that tell the axis' numbers apart.</summary>
        public int Decimals => Math.Clamp(2 - (int)Math.Floor(Math.Log10(High - Low)), 0, 6);

        public bool Shows(double value) => value >= Low && value <= High;

        public double X(DateTimeOffset at) => Left + ((at - From).TotalHours / Hours * (Width - Left - Right));

        public double Y(double value) => Height - Bottom - ((value - Low) / (High - Low) * (Height - Top - Bottom));
    }
}
