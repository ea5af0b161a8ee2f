using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Storage.LiteDb;
using Logbook.Storage.Postgres;

namespace Logbook.Commands;

/// <summary>The whole chain, record by record.</summary>
internal static class VerifyCommand
{
    public static Command Make(Shell shell)
    {
        var json = Options.Json();
        var head = Options.Text("--head", "A head that a printed note carries: the journal must contain the record it belongs to.", "HASH");
        var command = new Command("verify", "Reads every record and checks that its hash and its place in the chain are right, and says whose PIN is no longer kept. With --json: ok, records, head, first_bad.") { json, head };
        ServerOptions.AddTo(command);
        command.SetAction(parse => parse.GetValue(ServerOptions.Server) ? OnServer(shell, parse, parse.GetValue(json), parse.GetValue(head)) : OpenSite.Journal(shell, parse, store =>
        {
            var code = Print(shell, parse.GetValue(json), Watched(shell, store));
            if (code == ExitCode.Done)
            {
                SayLostPins(shell, store, SigningOptions.Pins(shell, parse));
            }

            return code == ExitCode.Done && parse.GetValue(head) is { } noted ? Contains(shell, store, noted) : code;
        }, whenDamaged: ExitCode.VerificationFailed));
        return command;
    }

    /// <summary>What the server holds, read whole; and, where a line's own journal is at hand, whether that holds the same.</summary>
    private static int OnServer(Shell shell, ParseResult parse, bool json, string? noted)
    {
        if (noted is not null && parse.GetValue(ServerOptions.Line) is not { Length: 1 })
        {
            return shell.Refuse("a head belongs to one line", "--server --line ID --head HASH");
        }

        var all = new JsonArray();
        var code = ServerReading.Lines(shell, parse, journal =>
        {
            using var progress = Progress.Of(shell, "verifying " + journal.Line.Chain, journal.Line.Head.Seq);
            var answer = journal.Verify(progress.Work);
            all.Add(Object(answer, journal.Line.Chain));
            if (!json)
            {
                shell.Out.WriteLine($"{journal.Line.Chain}: {Words(answer)}");
            }

            var code = answer.Ok ? Same(shell, parse, journal.Line) : ExitCode.VerificationFailed;
            return code == ExitCode.Done && noted is not null ? Contains(shell, journal, noted) : code;
        }, whenDamaged: ExitCode.VerificationFailed);
        if (json && all.Count > 0)
        {
            shell.Out.WriteLine(Json.Text(new JsonObject { ["verify"] = all }));
        }

        return code;
    }

    private static int Same(Shell shell, ParseResult parse, ServerLine there) => OpenSite.Journal(shell, parse, here =>
    {
        if (here.Read().FirstOrDefault()?.Chain != there.Chain || here.Head.Seq < there.Head.Seq)
        {
            return ExitCode.Done; // another line's journal, or none, or an older one: forward --status says which
        }

        var same = there.Head.Seq == 0 || here.Read(there.Head.Seq).First().Hash == there.Head.Hash;
        shell.Error.WriteLine(same
            ? string.Create(CultureInfo.InvariantCulture, $"{there.Chain}: this line's journal has the same head at record {there.Head.Seq}{(here.Head == there.Head ? "" : $", and {here.Head.Seq - there.Head.Seq} more that wait")}")
            : $"{there.Chain}: this line's journal is another one: see logbook forward --status");
        return same ? ExitCode.Done : ExitCode.VerificationFailed;
    }, whenDamaged: ExitCode.VerificationFailed);

    /// <summary>Whether the journal that a note was drawn from lives on, unaltered, in this one.</summary>
    private static int Contains(Shell shell, IJournalStore store, string noted)
    {
        var hash = string.Concat(noted.Where(c => !char.IsWhiteSpace(c)));
        if (hash.Length < 12)
        {
            return shell.Refuse($"--head {noted}: too short to be sure", "12 hexadecimal digits or more");
        }

        var record = store.Read().FirstOrDefault(r => r.Hash.StartsWith(hash, StringComparison.OrdinalIgnoreCase));
        if (record is null)
        {
            shell.Error.WriteLine($"no record has the head {noted}: this is not the journal that the note was drawn from, or its end is lost");
            return ExitCode.VerificationFailed;
        }

        shell.Error.WriteLine($"the head given is that of record {record.Seq}: all up to it is as it was when the note was drawn");
        return ExitCode.Done;
    }

    /// <summary>No record holds a PIN, so the chain is sound without them; but who takes the file away must not go unseen.</summary>
    private static void SayLostPins(Shell shell, IJournalStore store, Pins pins)
    {
        if (LostPins.Of(Replay.Forward(store, State.Empty), pins) is { Count: > 0 } lost)
        {
            shell.Error.WriteLine(Say.Visible($"WARNING: PINs were set and are no longer kept in journal/pins: {string.Join(", ", lost.Select(p => $"{p.Code} {Say.Ref(p.Seq)}"))}; "
                + "in a copy or a restored journal that is as it should be, else the file was taken away; setting one anew is a reset"));
        }
    }

    private static ChainCheck Watched(Shell shell, LiteDbJournal store)
    {
        using var progress = Progress.Of(shell, "verifying", store.Anchor()?.Seq ?? 0);
        return store.Verify(progress.Work);
    }

    private static int Print(Shell shell, bool json, ChainCheck answer)
    {
        shell.Out.WriteLine(json ? Json.Text(Object(answer, line: null)) : Words(answer));
        return answer.Ok ? ExitCode.Done : ExitCode.VerificationFailed;
    }

    private static string Words(ChainCheck answer) => answer.Ok
        ? string.Create(CultureInfo.InvariantCulture, $"sound: {answer.Records} records, head {answer.Head.Hash}")
        : string.Create(CultureInfo.InvariantCulture, $"NOT SOUND at record {answer.FirstBad}: {answer.Why}; the {answer.Records} records before it are sound");

    private static JsonObject Object(ChainCheck answer, string? line)
    {
        var said = line is null ? [] : new JsonObject { ["line"] = line };
        (said["ok"], said["records"], said["head"]) = (answer.Ok, answer.Records, answer.Head.Hash);
        said["first_bad"] = answer.FirstBad is { } bad ? JsonValue.Create(bad) : null;
        return said;
    }
}
