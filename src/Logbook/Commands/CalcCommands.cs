using Logbook.Handover;
using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Contracts;
using Logbook.Plant;
using Logbook.PluginHost;

namespace Logbook.Commands;

/// <summary>The calculations by hand, without a journal.</summary>
internal static class CalcCommands
{
    private static readonly Rows<LoadedCalculation> Listing = new("calculations",
        new("id", c => c.Calculation.Info.Id), new("title", c => c.Calculation.Info.Title), new("system", c => c.Calculation.Info.System), new("plugin", c => c.PlugIn));

    public static Command Make(Shell shell) => new("calc", "The plant's calculations, by hand.") { List(shell), Explain(shell), Run(shell) };

    private static Command List(Shell shell)
    {
        var json = Options.Json();
        var command = new Command("list", $"Every calculation. {Listing.Keys}") { json };
        command.SetAction(parse => OpenSite.Guarded(shell, () => Listing.Print(
            shell, parse.GetValue(json), All(shell, parse).OrderBy(c => c.Calculation.Info.Id, StringComparer.Ordinal), "no plug-in offers a calculation")));
        return command;
    }

    private static Command Explain(Shell shell)
    {
        var id = new Argument<string>("ID");
        var values = Values();
        var u = Uncertainties();
        var command = new Command("explain", "What it is for, its formula, roles, source and what it leaves out, and how the site binds it with which constants; with values, the sums step by step.") { id, values, u };
        command.SetAction(parse => WithOne(shell, parse, parse.GetValue(id)!, loaded =>
        {
            CalculationHelp.Print(shell.Out, loaded.Calculation.Info);
            var site = SiteOf(shell, parse);
            if (site is not null)
            {
                BindingHelp.Print(shell.Out, site, loaded.Calculation.Info);
            }

            var typed = parse.GetValue(values) ?? [];
            return typed.Length == 0 ? ExitCode.Done : ByHand(shell, loaded, typed, parse.GetValue(u) ?? [], json: false, steps: true, BindingHelp.Constants(shell.Out, site, loaded, typed));
        }));
        return command;
    }

    private static Command Run(Shell shell)
    {
        var id = new Argument<string>("ID");
        var values = Values();
        var u = Uncertainties();
        var json = Options.Json();
        var command = new Command("run", "Computes. With --json: id, outputs (each with value, unit, u), notes. What cannot be is refused with one line and exit code 2.") { id, values, u, json };
        command.SetAction(parse => WithOne(shell, parse, parse.GetValue(id)!, loaded =>
            ByHand(shell, loaded, parse.GetValue(values) ?? [], parse.GetValue(u) ?? [], parse.GetValue(json), steps: false)));
        return command;
    }

    private static Argument<string[]> Values() => new("role=VALUE[ UNIT]") { Arity = ArgumentArity.ZeroOrMore, Description = "One for each role; the role's unit unless said." };

    private static Option<string[]> Uncertainties() => Options.Many("--u", "Standard uncertainty of a role; may be repeated.", "role=U");

    private static IReadOnlyList<LoadedCalculation> All(Shell shell, ParseResult parse) => OpenSite.Calculations(shell, OpenSite.Folder(shell, parse));

    /// <summary>The site of the folder, when there is one without mistakes: by hand a calculation needs none.</summary>
    private static Site? SiteOf(Shell shell, ParseResult parse)
    {
        var folder = OpenSite.Folder(shell, parse);
        return File.Exists(Path.Combine(folder, SiteFiles.SiteToml)) && SiteReader.Load(folder).Value is { } files ? SiteReader.Read(files).Value : null;
    }

    private static int WithOne(Shell shell, ParseResult parse, string id, Func<LoadedCalculation, int> action) => OpenSite.Guarded(shell, () =>
    {
        var all = All(shell, parse);
        var one = all.FirstOrDefault(c => c.Calculation.Info.Id.Equals(id, StringComparison.OrdinalIgnoreCase));
        return one is not null ? action(one) : shell.Refuse($"there is no calculation {id}", Spelling.Accepted(id, [.. all.Select(c => c.Calculation.Info.Id)]));
    });

    private static int ByHand(Shell shell, LoadedCalculation loaded, IReadOnlyList<string> values, IReadOnlyList<string> u, bool json, bool steps, IReadOnlyDictionary<string, Quantity>? constants = null)
    {
        var answer = CalculationRun.ByHand(loaded, values, u, new DeadlineGuard(), constants);
        if (answer.Value is not { } computed)
        {
            return shell.Refuse(answer.Mistakes);
        }

        if (json)
        {
            var outputs = new JsonObject();
            foreach (var output in computed.Outputs)
            {
                outputs[output.Id] = new JsonObject { ["value"] = output.Value, ["unit"] = output.Unit }.AddIfPresent("u", output.U);
            }

            shell.Out.WriteLine(Json.Text(new JsonObject { ["id"] = loaded.Calculation.Info.Id, ["outputs"] = outputs }.AddIfPresent("notes", computed.Notes)));
            return ExitCode.Done;
        }

        foreach (var line in steps ? computed.Steps : [])
        {
            shell.Out.WriteLine("  " + line);
        }

        foreach (var output in computed.Outputs)
        {
            shell.Out.WriteLine($"{output.Id}: {Shown.Of(output.Value, output.UnitInWords, output.U, output.Covers)}");
        }

        foreach (var note in computed.Notes)
        {
            shell.Out.WriteLine("note: " + Say.Visible(note));
        }

        return ExitCode.Done;
    }
}
