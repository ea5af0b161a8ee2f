using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

internal static class PeopleCommand
{
    private sealed record Row(Person Person, bool Pin, bool PinLost, bool Closed);

    private static readonly Rows<Row> Listing = new("people",
        new("code", p => p.Person.Code), new("name", p => p.Person.Name), new("role", p => p.Person.Role.ToString().ToLowerInvariant()), new("crew", p => p.Person.Crew),
        new("pin", p => p.Pin), new("pin_lost", p => p.PinLost), new("closed", p => p.Closed));

    public static Command Make(Shell shell) => new("people", "The people who may write, and their PINs.") { List(shell), Pin(shell), Close(shell), Confirm(shell) };

    private static Command List(Shell shell)
    {
        var json = Options.Json();
        var command = new Command("list", $"The site's people. PIN lost: the records say that one was set and journal/pins no longer holds it. {Listing.Keys}") { json };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            var pins = SigningOptions.Pins(shell, parse);
            return Listing.Print(
                shell, parse.GetValue(json), desk.Site.People.Select(p => new Row(p, pins.Has(p.Code), LostPins.Set(desk.State, pins, p.Code) is not null, desk.State.IsClosed(p.Code))), "the site file names nobody");
        }));
        return command;
    }

    private static Command Pin(Shell shell)
    {
        var code = new Argument<string>("CODE");
        var newPin = Options.Text("--new-pin-file", "Read the new PIN from a file; '-' is standard input.", "FILE");
        var command = Signed(shell, "pin", $"Sets your PIN ({Pins.Shortest} characters or more), or as a supervisor or engineer resets another's; a reset stands beside the next signature.", "set",
            (desk, parse, sign, by) => PeopleChanges.SetPin(desk, sign, parse.GetValue(code)!, by, () => new SecretLine(shell, parse.GetValue(newPin)).Ask($"new PIN of {parse.GetValue(code)}")));
        command.Add(code);
        command.Add(newPin);
        return command;
    }

    private static Command Close(Shell shell)
    {
        var code = new Argument<string>("CODE");
        var why = Options.Text("--why", "Why the person writes no more.", "TEXT");
        var command = Signed(shell, "close", "Closes a person's code: nothing more can be written with it, old records keep the name.", "closed",
            (desk, parse, sign, by) => PeopleChanges.Close(desk, sign, parse.GetValue(code)!, by, parse.GetValue(why) ?? ""));
        command.Add(code);
        command.Add(why);
        return command;
    }

    private static Command Confirm(Shell shell)
    {
        var seq = new Argument<long>("SEQ") { Description = "The record that a witness signed for you." };
        var command = Signed(shell, "confirm", "Confirms with your own PIN what a witness signed for you.", "confirmed",
            (desk, parse, sign, by) => PeopleChanges.Confirm(desk, sign, parse.GetValue(seq), by));
        command.Add(seq);
        return command;
    }

    private static Command Signed(Shell shell, string name, string help, string done, Func<Desk, ParseResult, SignWith, string, Handed> change)
    {
        var by = Options.By();
        var json = Options.Json();
        var signing = SigningOptions.New();
        var command = new Command(name, help) { by, json, signing.PinFile };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
            WrittenOut.Print(shell, parse.GetValue(json), change(desk, parse, signing.Of(shell, parse), parse.GetValue(by) ?? ""), done)));
        return command;
    }
}
