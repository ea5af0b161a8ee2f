using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>What outlives the shift: opened, listed, closed by a named person.</summary>
internal static class CarryCommands
{
    private static readonly Rows<CarriedItem> Listing = new("carry",
        new("id", c => c.Id), new("kind", c => c.ItemKind), new("on", c => c.On), new("since", c => c.Since), new("by", c => c.By),
        new("until", c => c.Until), new("last_seen", c => c.LastSeen), new("owner", c => c.Owner), new("text", c => c.Text),
        new("changed", c => c.Changes.IsEmpty ? null : c.Changes[^1].Changed), new("locks", c => c.Locks.IsEmpty ? null : c.Locks),
        new("fields", c => c.Fields.Count == 0 ? null : c.Fields.Select(f => $"{f.Key}={f.Value}").ToList()));

    public static Command Make(Shell shell) => new("carry", "Carried items: what is open and outlives the shift.") { Add(shell), LineCommands.CarryConfirm(shell), Close(shell), List(shell) };

    private static Command Add(Shell shell)
    {
        var kind = Options.Text("--kind", "action, isolation, permit, bypass, temporary-change, out-of-service, safety-equipment, wash, transfer, delivery, sample, injury or release.", "K");
        var on = Options.Text("--on", "The equipment or area.", "EQUIPMENT");
        var text = Options.Text("--text", "What is open.", "TEXT");
        var until = Options.Text("--until", "When it ends or is due; 06:00 is the next one.", "TIME");
        var since = Options.Text("--since", "Since when it is so, at most twelve hours ago; now unless said.", "TIME");
        var owner = Options.Text("--owner", "Code of the person who owns it.", "CODE");
        var set = Options.Many("--set", $"What this kind asks for beside it; may be repeated. Names, those that are needed with a star: {Names()}.", "NAME=VALUE");
        var by = Options.By();
        var json = Options.Json();
        var command = new Command("add", "Opens a carried item; its id is the record's number.") { kind, on, text, since, until, owner, set, by, json };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var end = Options.Ahead(parse, until, desk.Site, desk.Now, mistakes);
            var begun = Options.Back(parse, since, desk.Site, desk.Now, mistakes);
            var fields = Options.Fields(parse.GetValue(set) ?? [], mistakes);
            if (mistakes.Count > 0)
            {
                return shell.Refuse(mistakes);
            }

            var item = new Carry(parse.GetValue(kind) ?? "", parse.GetValue(on) ?? "", parse.GetValue(text) ?? "", end, parse.GetValue(owner), fields);
            var code = WrittenOut.Print(shell, parse.GetValue(json), Writing.AddCarried(desk, item, parse.GetValue(by) ?? "", begun), "open");
            if (code == ExitCode.Done)
            {
                CautionText.Opened(shell, desk.Site, "carry:" + item.ItemKind, item.On);
                CautionText.YetRecorded(shell, desk, item.On);
            }

            return code;
        }));
        return command;
    }

    private static string Names() => string.Join("; ", CarryKinds.All.Select(k => $"{k.Name}: {string.Join(", ", k.Names.Select(n => k.Fields.Contains(n, StringComparer.Ordinal) ? n + "*" : n))}"));

    private static Command Close(Shell shell)
    {
        var id = new Argument<long>("ID");
        var why = Options.Text("--why", "How it ended.", "TEXT");
        var step = Options.Text("--lock", "off: your own lock, recorded as on, came off the isolation with it.", "STEP");
        var by = Options.By();
        var json = Options.Json();
        var signing = SigningOptions.New();
        var command = new Command("close", "Closes a carried item, with the reason; by PIN where it can hurt.") { id, why, step, by, json };
        signing.AddTo(command);
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            CautionText.BeforeClosing(shell, desk, parse.GetValue(id));
            return WrittenOut.Print(
                shell, parse.GetValue(json),
                SignedWriting.Close(desk, signing.Of(shell, parse), new CarryClosed(parse.GetValue(id), parse.GetValue(why) ?? "") { Lock = parse.GetValue(step) }, parse.GetValue(by) ?? ""), "closed");
        }));
        return command;
    }

    private static Command List(Shell shell)
    {
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("list", $"What is open, oldest first. {Listing.Keys}") { json, asOf };
        command.SetAction(parse => OpenSite.ForReading(
            shell, parse, desk => Listing.Print(shell, parse.GetValue(json), desk.State.Carried, "nothing recorded as open"), asOf));
        return command;
    }
}
