using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Standing orders, each read person by person.</summary>
internal static class OrderCommands
{
    private static readonly Rows<OrderRow> Listing = new("order",
        new("id", o => o.Id), new("person", o => o.Person), new("read", o => o.SeenAt is null ? "NOT READ" : "read"), new("seen", o => o.SeenAt), new("since", o => o.Since), new("by", o => o.By),
        new("until", o => o.Until, WhenAny: true), new("withdrawn", o => o.Withdrawn?.At, WhenAny: true), new("withdrawn_by", o => o.Withdrawn?.By, WhenAny: true), new("why", o => o.Withdrawn?.Why, WhenAny: true), new("text", o => o.Text));

    public static Command Make(Shell shell) => new("order", "Standing orders: given, read by each person, withdrawn, listed.") { Add(shell), Seen(shell), Withdraw(shell), List(shell) };

    private static Command Add(Shell shell)
    {
        var text = new Argument<string>("TEXT");
        var until = Options.Text("--until", "When it ends; it stands until then, or until it is withdrawn.", "TIME");
        return WriteCommand.Make(shell, "add", "Gives a standing order; its id is the record's number.", "stands", [text, until], (parse, desk, by, mistakes) =>
        {
            var end = Options.Ahead(parse, until, desk.Site, desk.Now, mistakes);
            return () => Writing.GiveOrder(desk, parse.GetValue(text)!, end, by);
        });
    }

    private static Command Seen(Shell shell)
    {
        var id = new Argument<long>("ID");
        return WriteCommand.Make(shell, "seen", "Says that you have read an order, or that it was withdrawn.", "read", [id], (parse, desk, by, _) => () => Writing.SeeOrder(desk, parse.GetValue(id), by));
    }

    private static Command Withdraw(Shell shell)
    {
        var id = new Argument<long>("ID");
        var why = Options.Text("--why", "Why it holds no longer.", "TEXT");
        return WriteCommand.Make(shell, "withdraw", "Ends an order; whoever had read it is shown that it holds no longer.", "withdrawn", [id, why], (parse, desk, by, _) => () => Writing.WithdrawOrder(desk, parse.GetValue(id), parse.GetValue(why) ?? "", by));
    }

    private static Command List(Shell shell)
    {
        var unseen = new Option<bool>("--unseen") { Description = "Only who has not read." };
        var all = new Option<bool>("--all") { Description = "Those too that were withdrawn in the last two weeks: when, by whom, why." };
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("list", $"Each order that stands with each person, and when they read it. {Listing.Keys}") { unseen, all, json, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk => Listing.Print(
            shell, parse.GetValue(json), OrderRow.Of(desk, parse.GetValue(all)).Where(o => !parse.GetValue(unseen) || o.SeenAt is null), "no standing order"), asOf));
        return command;
    }
}
