using System.Globalization;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Storage.Postgres;

namespace Logbook;

/// <summary>How far behind the server is, in one line for Now. Needs no network.</summary>
internal static class ServerWords
{
    // A record every hour or two is usual; this much waiting means that something is not right. Judgement, no source.
    private static readonly TimeSpan Patience = TimeSpan.FromHours(1);

    /// <summary>What was noted when something was last forwarded to the server that is named here; null when none is.</summary>
    public static Func<Head, ServerView>? Noted(Shell shell, string folder, Desk desk) =>
        ServerOptions.IsNamed(shell, folder) ? Noted(ServerOptions.Address(shell, folder), folder, desk, () => null) : null;

    /// <param name="trouble">Why the last try brought nothing.</param>
    public static Func<Head, ServerView> Noted(Parsed<ServerAddress> server, string folder, Desk desk, Func<string?> trouble) => server.Ok
        ? here => Of(desk.Site, ForwardNote.Of(folder, server.Value!).Read(), here, desk.Now, trouble())
        : here => Of(desk.Site, last: null, here, desk.Now, $"{server.Mistakes[0]}");

    /// <param name="last">What was last acknowledged.</param>
    /// <param name="trouble">Why the last try brought nothing; null when it went well, or when nobody tries here.</param>
    public static ServerView Of(Site site, Acknowledged? last, Head here, DateTimeOffset now, string? trouble)
    {
        var behind = here.Seq - (last?.Head.Seq ?? 0);
        var holds = last is null ? "has acknowledged nothing yet" : behind <= 0 ? $"holds everything, {Say.Time(site, last.At, now)}" : $"holds all up to record {last.Head.Seq}, {Say.Time(site, last.At, now)}";
        var waits = behind <= 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"; {behind} {(behind == 1 ? "record waits" : "records wait")} here, none is lost");
        var why = trouble is null ? "" : $". Last try: {Say.Visible(trouble)}";
        return new ServerView($"{holds}{waits}{why}", Watch: trouble is not null && (behind > 0 && (last is null || now - last.At > Patience) || trouble.StartsWith("REFUSED", StringComparison.Ordinal)));
    }
}
