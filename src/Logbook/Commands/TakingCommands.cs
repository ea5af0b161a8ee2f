using System.CommandLine;
using System.Globalization;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Commands;

/// <summary>What the one who takes the line does.</summary>
internal static class TakingCommands
{
    public static IEnumerable<Command> All(Shell shell) => [Open(shell), Question(shell), Ask(shell), Accept(shell), Refuse(shell), Relief(shell)];

    private static Command Open(Shell shell)
    {
        var name = new Argument<string>("PAGE") { Description = "hazards, moving, changed, or the number of a record." };
        var step = new Step(shell, "open", "Shows a page of the handover in full; a record says that you were shown it.", name);
        return step.Acts((desk, parse, by) =>
        {
            var (page, seen) = HandoverPages.Open(desk, by, parse.GetValue(name)!);
            if (page is not null && !step.Json(parse))
            {
                PageOut.Print(shell.Out, page);
            }

            return WrittenOut.Print(shell, step.Json(parse), seen, $"opened {parse.GetValue(name)}");
        });
    }

    private static Command Question(Shell shell)
    {
        var step = new Step(shell, "question", "The question from the hazards page, three on a bad shift; answer with: handover accept --answer N.");
        return step.Acts((desk, parse, by) =>
        {
            var mistakes = desk.WhyNot(by).ToList();
            return mistakes.Count > 0 ? shell.Refuse(mistakes) : Print(shell, step.Json(parse), HazardQuestions.For(desk, by));
        });
    }

    private static readonly Rows<HazardQuestion> Questions = new("questions", new("about", q => q.About), new("text", q => q.Text), new("choices", q => q.Choices));

    private static int Print(Shell shell, bool json, IReadOnlyList<HazardQuestion> questions)
    {
        if (json)
        {
            return Questions.Print(shell, json, questions, "");
        }

        if (questions.Count == 0)
        {
            shell.Out.WriteLine("nothing is recorded as open that a question could be about");
        }

        foreach (var question in questions)
        {
            shell.Out.WriteLine(question.Text);
            for (var i = 0; i < question.Choices.Count; i++)
            {
                shell.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {i + 1} {question.Choices[i]}"));
            }
        }

        return ExitCode.Done;
    }

    private static Command Ask(Shell shell)
    {
        var text = new Argument<string>("TEXT");
        var about = new Option<long?>("--about") { Description = "The record that it is about.", HelpName = "SEQ" };
        return new Step(shell, "ask", "Asks the other crew something, before or after the line changed hands.", text, about)
            .Does("asked", (desk, parse, by) => Asking.Ask(desk, by, parse.GetValue(text)!, parse.GetValue(about)));
    }

    private static Command Accept(Shell shell)
    {
        var first = Options.Many("--first", "\"I check first ...\", one to three lines in your own words; \"nothing beyond the list\" is one.", "TEXT");
        var answers = new Option<int[]>("--answer") { Description = "The number of a choice, once for each question.", DefaultValueFactory = _ => [], HelpName = "N" };
        var reservation = Options.Text("--reservation", "Take the line over, but not without saying this.", "TEXT");
        var unattended = Options.Text("--unattended", "Nobody hands over: why. A supervisor signs for it within the shift.", "REASON");
        return new Step(shell, "accept", "Takes the line over: from here on you hold it. Signed by PIN.", first, answers, reservation, unattended).Signs("you hold the line", (desk, parse, sign, by) =>
        {
            // The own lines are given by now: what the other side wrote and answered shows before the PIN, or with one from a file once it was right.
            var told = BeforeSigning.Receiver(desk, by);
            void Show() => PageOut.Lines(shell.Error, told);
            var handed = Accepting.Accept(desk, sign.After(Show), new AcceptRequest(by, parse.GetValue(first)!, parse.GetValue(answers)!)
            {
                Reservation = parse.GetValue(reservation),
                Unattended = parse.GetValue(unattended),
            });
            if (sign.Tell is null && handed.Record is not null)
            {
                Show();
            }

            return handed;
        },
        // Who went over them above the PIN reads them here.
        under: (desk, handed) => PageOut.Lines(shell.Error, BeforeSigning.OfGiver(desk, (HandoverAccepted)handed.Record!.Body)));
    }

    private static Command Refuse(Shell shell)
    {
        var why = Options.Text("--why", "Why you do not take over.", "TEXT");
        return new Step(shell, "refuse", "Does not take over: the line stays where it is, and a supervisor has to sign.", why)
            .Does("refused; the line stays where it is", (desk, parse, by) => Staying.Refuse(desk, by, parse.GetValue(why) ?? ""));
    }

    private static Command Relief(Shell shell)
    {
        var first = Options.Text("--first", "A short relief: one line of what you watch.", "TEXT");
        var emergency = new Option<bool>("--emergency") { Description = "Takes the line at once, without a PIN; what you have not read stays on your screens until opened." };
        var leave = new Option<bool>("--leave") { Description = "You have to go and nobody is there to take the line." };
        var why = Options.Text("--why", "With --emergency and --leave: one of the site's reasons, by digit or words.", "REASON");
        return new Step(shell, "relief", "Takes the line for less than an hour and back (PIN and one line), or in an emergency (neither).", first, emergency, leave, why)
            .Signs("done", (desk, parse, sign, by) =>
                parse.GetValue(emergency) ? Relieving.Emergency(desk, by, parse.GetValue(why) ?? "")
                : parse.GetValue(leave) ? Relieving.Leave(desk, by, parse.GetValue(why) ?? "")
                : Relieving.Short(desk, sign, by, parse.GetValue(first) ?? ""));
    }
}
