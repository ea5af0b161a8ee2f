using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Journal;
using Logbook.Storage.Postgres;

namespace Logbook.Commands;

/// <summary>Sends what the mill's server does not hold yet. The journal stays where it is and stays the line's own.</summary>
internal static class ForwardCommand
{
    public static Command Make(Shell shell)
    {
        var status = new Option<bool>("--status") { Description = "Only says how the two stand." };
        var json = Options.Json();
        var command = new Command("forward", "Sends the records that the mill's server does not hold, in order, each once. May be run at any time, by several at once, and again after any cut. With --json: line, state (empty, whole, behind, ahead, differs, away), sent, records, on_server, behind, head, server_head, text.") { status, json };
        command.SetAction(parse => OpenSite.Journal(shell, parse, line => ServerReading.With(shell, parse, server =>
        {
            var note = ForwardNote.Of(OpenSite.Folder(shell, parse), server.Address);
            try
            {
                return Print(shell, parse.GetValue(json), Run(shell, new Forwarder(line, server, note, shell.Clock), line.Head, parse.GetValue(status)));
            }
            catch (JournalException trouble) when (trouble.Trouble is not JournalTrouble.Damaged)
            {
                return Away(shell, parse.GetValue(json), line.Head, note.Read(), trouble);
            }
        }), whenDamaged: ExitCode.Store));
        return command;
    }

    private static ForwardReport Run(Shell shell, Forwarder forwarder, Head head, bool onlyLook)
    {
        if (onlyLook)
        {
            return forwarder.Look();
        }

        using var progress = Progress.Of(shell, "forwarding", head.Seq);
        return forwarder.Run(progress.Work);
    }

    private static int Print(Shell shell, bool json, ForwardReport report)
    {
        var refused = report.Agreement is Agreement.Ahead or Agreement.Differs;
        if (json)
        {
            shell.Out.WriteLine(Json.Text(new JsonObject { ["state"] = report.Agreement.ToString().ToLowerInvariant() }
                .AddIfPresent("line", report.Chain.Length > 0 ? report.Chain : null).AddIfPresent("sent", report.Sent).AddIfPresent("records", report.Line.Seq).AddIfPresent("on_server", report.There.Seq)
                .AddIfPresent("behind", report.Behind).AddIfPresent("head", report.Line.Hash).AddIfPresent("server_head", report.There.Hash).AddIfPresent("text", string.Join(". ", report.Words))));
        }

        foreach (var line in json && !refused ? [] : report.Words)
        {
            (refused ? shell.Error : shell.Out).WriteLine(line);
        }

        return refused ? ExitCode.VerificationFailed : ExitCode.Done;
    }

    /// <summary>What can still be said: nothing waits anywhere but in the journal.</summary>
    private static int Away(Shell shell, bool json, Head here, Acknowledged? last, JournalException trouble)
    {
        var behind = here.Seq - (last?.Head.Seq ?? 0);
        if (json)
        {
            shell.Out.WriteLine(Json.Text(new JsonObject { ["state"] = trouble.Trouble is JournalTrouble.Away ? "away" : "refused" }
                .AddIfPresent("records", here.Seq).AddIfPresent("on_server", last?.Head.Seq).AddIfPresent("behind", behind).AddIfPresent("head", here.Hash).AddIfPresent("text", trouble.Message)));
        }

        shell.Error.WriteLine(trouble.Message);
        shell.Error.WriteLine(last is null
            ? string.Create(CultureInfo.InvariantCulture, $"the server has acknowledged nothing yet; all {here.Seq} records wait in the journal, and nothing of them is lost")
            : string.Create(CultureInfo.InvariantCulture, $"it last acknowledged record {last.Head.Seq}, {last.At:yyyy-MM-dd HH:mm} UTC; {behind} wait in the journal, and nothing of them is lost"));
        return ExitCode.Store;
    }
}
