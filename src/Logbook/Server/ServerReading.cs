using System.CommandLine;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.PluginHost;
using Logbook.Storage.Postgres;

namespace Logbook;

/// <summary>Lines as the server holds them, each read as a terminal of that line would: the same functions over the same records.</summary>
internal static class ServerReading
{
    /// <summary>Opens the server that is named; bad input when none is, or when what is said of it cannot be used.</summary>
    public static int With(Shell shell, ParseResult parse, Func<Server, int> action, int whenDamaged = ExitCode.Store)
    {
        var address = ServerOptions.Address(shell, OpenSite.Folder(shell, parse));
        return !address.Ok ? shell.Refuse(address.Mistakes) : OpenSite.Guarded(shell, () =>
        {
            using var server = new Server(address.Value!);
            return action(server);
        }, whenDamaged);
    }

    /// <summary>Runs <paramref name="action"/> on each line that is asked for.</summary>
    public static int Lines(Shell shell, ParseResult parse, Func<ServerJournal, int> action, int whenDamaged = ExitCode.Store) => With(shell, parse, server =>
    {
        var lines = Chosen(server.Lines(), parse.GetValue(ServerOptions.Line) ?? [], out var mistakes);
        return mistakes.Count > 0 ? shell.Refuse(mistakes) : lines.Select(line => action(new ServerJournal(server, line))).Aggregate(ExitCode.Done, Worse);
    }, whenDamaged);

    /// <summary>Runs <paramref name="action"/> on a desk of each line that is asked for, several at once, and prints what they say in the order of the lines.</summary>
    public static int Each(Shell shell, ParseResult parse, Func<Shell, Desk, int> action) => With(shell, parse, server =>
    {
        var lines = Chosen(server.Lines(), parse.GetValue(ServerOptions.Line) ?? [], out var mistakes);
        if (mistakes.Count > 0)
        {
            return shell.Refuse(mistakes);
        }

        var said = lines.AsParallel().AsOrdered().Select(line => Ask(shell with { OneOfMany = lines.Count > 1 }, new ServerJournal(server, line), action)).ToList();
        Print(shell, said);
        return said.Select(s => s.Code).Aggregate(ExitCode.Done, Worse);
    });

    private static List<ServerLine> Chosen(IReadOnlyList<ServerLine> all, IReadOnlyList<string> wanted, out List<Mistake> mistakes)
    {
        var names = all.Select(l => l.Chain).ToList();
        mistakes = [.. wanted.Where(w => !names.Contains(w, StringComparer.OrdinalIgnoreCase)).Select(w => Mistake.Typed($"the server holds no line {w}", Spelling.Accepted(w, names)))];
        if (all.Count == 0)
        {
            mistakes.Add(Mistake.Typed("the server holds no line yet", "logbook server admit LINE --forwarder ROLE"));
        }

        return [.. all.Where(l => wanted.Count == 0 || wanted.Contains(l.Chain, StringComparer.OrdinalIgnoreCase))];
    }

    private static Said Ask(Shell shell, ServerJournal journal, Func<Shell, Desk, int> action)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var own = shell with { Out = output, Error = error, Watched = false };
        var code = OpenSite.Guarded(own, () =>
        {
            var state = Replay.Forward(journal, State.Empty);
            if (state.Files is not { } files)
            {
                own.Error.WriteLine("no record has arrived yet");
                return ExitCode.Done;
            }

            var desk = new Desk(journal, files, [], new DeadlineGuard(), shell.Clock, shell.Terminal, state);
            return desk.NotReady.Count > 0 ? own.Refuse(desk.NotReady) : action(own, desk);
        });
        return new(journal.Line.Chain, code, output.ToString(), error.ToString());
    }

    private static void Print(Shell shell, List<Said> said)
    {
        foreach (var one in said)
        {
            foreach (var line in one.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            {
                shell.Error.WriteLine($"{one.Line}: {line}");
            }
        }

        var texts = said.Where(s => s.Out.Length > 0).ToList();
        if (texts.Count > 0 && texts.TrueForAll(s => s.Out[0] == '{'))
        {
            shell.Out.WriteLine(Json.Text(Together([.. texts.Select(s => (s.Line, JsonNode.Parse(s.Out)!.AsObject()))])));
            return;
        }

        foreach (var one in texts)
        {
            shell.Out.WriteLine(Say.Visible($"== {one.Line}"));
            shell.Out.Write(one.Out);
            shell.Out.WriteLine();
        }
    }

    /// <summary>A listing of several lines is one listing whose rows say their line; anything else is one object for each line.</summary>
    private static JsonObject Together(List<(string Line, JsonObject Said)> all)
    {
        var listing = all.TrueForAll(a => a.Said.Count == 1 && a.Said.First().Value is JsonArray) ? all[0].Said.First().Key : null;
        var rows = listing is null
            ? all.Select(a => Named(a.Line, a.Said))
            : all.SelectMany(a => a.Said.First().Value!.AsArray().Select(row => Named(a.Line, row!.AsObject())));
        return new JsonObject { [listing ?? "lines"] = new JsonArray([.. rows]) };
    }

    private static JsonObject Named(string line, JsonObject row)
    {
        var named = new JsonObject { ["line"] = line };
        foreach (var (key, value) in row)
        {
            named[key] = value?.DeepClone();
        }

        return named;
    }

    private static int Worse(int one, int other) => Math.Max(one, other);

    private sealed record Said(string Line, int Code, string Out, string Error);
}
