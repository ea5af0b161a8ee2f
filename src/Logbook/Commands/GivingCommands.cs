using System.CommandLine;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>What the one who holds the line does, and a supervisor afterwards.</summary>
internal static class GivingCommands
{
    public static IEnumerable<Command> All(Shell shell) =>
        [Prepare(shell), NotYet(shell), Continue(shell), Reply(shell), Countersign(shell), Called(shell)];

    private static Command Prepare(Shell shell)
    {
        var sections = Options.Many("--section", $"Each hazard section, declared: checked, not-checked or change (1, 2, 3); a change with what changed, change:WORDS. Sections: {string.Join(", ", HazardSections.All)}.", "NAME=WORD");
        var ifThen = Options.Many("--if", "What to do if something open turns: \"if it falls under 240, then ...\".", "TEXT");
        var words = Options.Many("--word", "A line in your own words; the receiver sees it after giving theirs.", "TEXT");
        var anew = new Option<bool>("--anew") { Description = "Drops the lines of what you prepared before; unless said they are kept." };
        return new Step(shell, "prepare", "Makes the note ready for whoever takes over; signed by PIN. Prepared again, it keeps the lines of the first time; each section is declared anew.", sections, ifThen, words, anew).Signs("prepared", (desk, parse, sign, by) =>
        {
            var declared = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
            foreach (var typed in parse.GetValue(sections)!)
            {
                var parts = typed.Split('=', 2);
                if (parts.Length != 2 || !declared.TryAdd(parts[0].Trim(), parts[1].Trim()))
                {
                    return new Handed(null, [Mistake.Typed($"--section {typed}: {(parts.Length == 2 ? "declared twice" : "not a declaration")}", "--section NAME=checked|not-checked|change:WORDS")], null);
                }
            }

            var request = new PrepareRequest(by, declared, parse.GetValue(ifThen)!, parse.GetValue(words)!) { Anew = parse.GetValue(anew) };
            return Preparing.Prepare(desk, sign.After(() => PageOut.Lines(shell.Error, [.. BeforeSigning.Contradicted(desk.Site, desk.State.Equipment, desk.State.Carried, desk.Now), .. BeforeSigning.Giver(declared), .. Preparing.Kept(desk, request).Select(line => new NoteLine("kept", line))])), request);
        });
    }

    private static Command NotYet(Shell shell)
    {
        var why = Options.Text("--why", "One of the site's reasons, by digit or words.", "REASON");
        return new Step(shell, "not-yet", "Keeps the line for now, because a critical step is running; prepare anew when it is over.", why)
            .Does("not yet", (desk, parse, by) => Staying.NotYet(desk, by, parse.GetValue(why) ?? ""));
    }

    private static Command Continue(Shell shell)
    {
        var why = Options.Text("--why", "Why the same person goes on.", "TEXT");
        return new Step(shell, "continue", "The same person goes on over a shift change: no acceptance, but what can hurt is opened first.", why)
            .Does("continues", (desk, parse, by) => Staying.Continue(desk, by, parse.GetValue(why) ?? ""));
    }

    private static Command Reply(Shell shell)
    {
        var id = new Argument<long>("ID") { Description = "The question's record." };
        var text = new Argument<string>("TEXT");
        var from = Options.Text("--from", "Who said it aloud, when another writes it down.", "CODE");
        return new Step(shell, "reply", "Answers a question.", id, text, from)
            .Does("answered", (desk, parse, by) => Asking.Reply(desk, by, parse.GetValue(id), parse.GetValue(text)!, parse.GetValue(from)));
    }

    private static Command Countersign(Shell shell)
    {
        var seq = new Argument<long?>("SEQ") { Arity = ArgumentArity.ZeroOrOne, Description = "A refused, unattended or emergency handover, or a bypass or change that you allowed; may be left out where one alone waits." };
        var why = Options.Text("--why", "What was found.", "TEXT");
        return new Step(shell, "countersign", "A supervisor signs for a refused, unattended or emergency handover, within the shift; who is named as having allowed a bypass or a change signs that.", seq, why)
            .Signs("countersigned", (desk, parse, sign, by) => Countersigning.Countersign(desk, sign, by, parse.GetValue(seq), parse.GetValue(why) ?? ""));
    }

    private static Command Called(Shell shell)
    {
        var code = new Argument<string>("CODE") { Description = "Who answered." };
        var text = new Argument<string>("TEXT") { Description = "What was said." };
        return new Step(shell, "called", "While nobody holds the line: who answered the call, and what was said.", code, text)
            .Does("written down", (desk, parse, by) => Asking.Called(desk, by, parse.GetValue(code)!, parse.GetValue(text)!));
    }
}
