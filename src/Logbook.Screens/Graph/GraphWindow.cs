using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>The stretch of time that is drawn.</summary>
/// <param name="Ends">Its end; null while it goes with the clock.</param>
/// <param name="Zoom">Which of the spans it has.</param>
internal sealed record GraphWindow(DateTimeOffset? Ends, int Zoom)
{
    private static readonly TimeSpan[] Spans = [.. new[] { 4.0, 12, 24, 72, 168, 336, 720 }.Select(TimeSpan.FromHours)];

    public static readonly GraphWindow LastDay = new(null, 2);

    public TimeSpan Span => Spans[Zoom];

    public DateTimeOffset To(DateTimeOffset now) => Ends ?? now.AddMinutes(1);

    public DateTimeOffset From(DateTimeOffset now) => To(now) - Span;

    public string? WhyNotCloser => Zoom == 0 ? "closer than four hours there is nothing more to see" : null;

    public string? WhyNotWider => Zoom == Spans.Length - 1 ? "thirty days are the most" : null;

    /// <summary>One step closer (-1) or wider (1), around the cursor.</summary>
    public GraphWindow Zoomed(int step, DateTimeOffset? around, DateTimeOffset now)
    {
        var zoomed = this with { Zoom = Math.Clamp(Zoom + step, 0, Spans.Length - 1) };
        var end = around is { } middle && middle > From(now) && middle < To(now) ? middle + (zoomed.Span / 2) : To(now);
        return zoomed with { Ends = end >= now ? null : end };
    }

    /// <summary>One shift back or on; never beyond the clock.</summary>
    public GraphWindow Walked(int shifts, Site site, DateTimeOffset now)
    {
        var end = To(now);
        var to = shifts < 0 ? Calendar.ShiftAt(site, end.AddTicks(-1)).Start : Calendar.ShiftAt(site, end).End;
        return this with { Ends = to >= now ? null : to };
    }
}
