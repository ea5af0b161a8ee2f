using System.Collections.Immutable;
using System.Globalization;
using Logbook.Checks;
using Logbook.Contracts;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>How a site binds a calculation: which points and which constants, with their source and the date when they were fitted.</summary>
internal static class BindingHelp
{
    public static void Print(TextWriter output, Site site, CalculationInfo info)
    {
        foreach (var binding in site.Calculations.Where(c => c.Use == info.Id))
        {
            output.WriteLine();
            output.WriteLine($"Here as '{Say.Visible(binding.Name)}' ({binding.Place.File} line {binding.Place.Line})");
            foreach (var input in info.Inputs)
            {
                output.WriteLine($"  {input.Role}: {Input(site, binding, input)}");
            }

            foreach (var gives in info.Outputs.Where(o => binding.Outputs.ContainsKey(o.Id)))
            {
                output.WriteLine($"  gives {gives.Id} to {Named(site, binding.Outputs[gives.Id])}{Estimate(binding, gives)}");
            }

            foreach (var needed in NotFitted(binding, info))
            {
                output.WriteLine($"  {needed}");
            }
        }
    }

    /// <summary>The constants of the first binding here, for roles that nobody typed; each is said.</summary>
    public static IReadOnlyDictionary<string, Quantity> Constants(TextWriter output, Site? site, LoadedCalculation loaded, IReadOnlyList<string> typed)
    {
        if (site?.Calculations.FirstOrDefault(c => c.Use == loaded.Calculation.Info.Id) is not { } binding)
        {
            return ImmutableDictionary<string, Quantity>.Empty;
        }

        output.WriteLine();
        var constants = CalculationRun.Constants(loaded, site, binding);
        foreach (var input in loaded.Calculation.Info.Inputs.Where(i => constants.ContainsKey(i.Role) && !typed.Any(t => t.StartsWith(i.Role + "=", StringComparison.OrdinalIgnoreCase))))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {input.Role} = {constants[input.Role].Value:0.######} {input.Unit}, as '{Say.Visible(binding.Name)}' has it here"));
        }

        return constants;
    }

    private static string Input(Site site, CalculationBinding binding, InputInfo input) => binding.Inputs.GetValueOrDefault(input.Role) switch
    {
        InputSource.FromPoint point => Named(site, point.Tag) + (binding.Lags.TryGetValue(input.Role, out var lag) ? $", as it was {Hours(lag)} before" : ""),
        InputSource.Constant constant => Constant(input, constant),
        _ when input.Role == "altitude" => string.Create(CultureInfo.InvariantCulture, $"{site.AltitudeM} m, the site's"),
        _ when input.Default is { } value => string.Create(CultureInfo.InvariantCulture, $"{value} {input.Unit}, the calculation's own default"),
        _ => "not bound",
    };

    private static string Constant(InputInfo input, InputSource.Constant constant) => string.Create(
        CultureInfo.InvariantCulture,
        $"{constant.Value} {constant.Unit?.Name ?? input.Unit}{(constant.U > 0 ? $", standard uncertainty {constant.U}" : ", exact")}; source: {Say.Visible(constant.Source)}; {(constant.Fitted is { } day ? $"fitted {day:yyyy-MM-dd}" : "no date")}");

    private static string Named(Site site, string tag) => site.FindPoint(tag) is { } point ? $"{point.Tag}, {Say.Visible(point.Description)}" : Say.Visible(tag);

    private static string Hours(TimeSpan lag) => string.Create(CultureInfo.InvariantCulture, $"{lag.TotalHours:0.##} h");

    private static string Estimate(CalculationBinding binding, OutputInfo gives) =>
        (binding.Estimates.GetValueOrDefault(gives.Id) ?? gives.Estimates) is { } quantity ? $"; a witness of {quantity}" : "";

    /// <summary>What hangs on a constant of the site is no witness until the site gives it with its date.</summary>
    private static IEnumerable<string> NotFitted(CalculationBinding binding, CalculationInfo info) =>
        from output in info.Outputs
        from role in output.NeedsFitted
        where binding.Inputs.GetValueOrDefault(role) is not InputSource.Constant { Fitted: not null }
        select $"{output.Id} is shown, but is no witness: {role} has no fitted value with a date here";
}
