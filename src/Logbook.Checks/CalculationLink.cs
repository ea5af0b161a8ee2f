using Logbook.Contracts;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Resolves one binding: its calculation, roles and units. That its tags are points the site's reader has seen to.</summary>
internal sealed class CalculationLink(Site site, IReadOnlyList<LoadedCalculation> calculations, CalculationBinding binding, List<Mistake> mistakes)
{
    public LinkedCalculation? Link()
    {
        if (calculations.FirstOrDefault(c => c.Calculation.Info.Id.Equals(binding.Use, StringComparison.Ordinal)) is not { } loaded)
        {
            string[] ids = [.. calculations.Select(c => c.Calculation.Info.Id)];
            Add($"{binding.Name}: there is no calculation '{binding.Use}'", Given.Instead(binding.Use, ids, "`calc list` shows them"));
            return null;
        }

        var info = loaded.Calculation.Info;
        CheckNames(info);
        var inputs = info.Inputs.Select(Input).OfType<LinkedInput>().ToList();
        var outputs = info.Outputs.Select(Output).OfType<LinkedOutput>().ToList();
        return new LinkedCalculation(binding, loaded, inputs, outputs);
    }

    private void CheckNames(CalculationInfo info)
    {
        string[] roles = [.. info.Inputs.Select(i => i.Role)];
        string[] outputs = [.. info.Outputs.Select(o => o.Id)];
        Unknown("input", binding.Inputs.Keys, roles);
        Unknown("lag", binding.Lags.Keys, [.. binding.Inputs.Where(i => i.Value is InputSource.FromPoint).Select(i => i.Key)]);
        Unknown("output", binding.Outputs.Keys, outputs);
        Unknown("estimates", binding.Estimates.Keys, outputs);
        Unknown("method_u", binding.MethodU.Keys, outputs);
        Unknown("moves", binding.Moves.Keys, outputs);
        Unknown("settles", binding.Settles.Keys, outputs);
    }

    private void Unknown(string what, IEnumerable<string> given, IReadOnlyCollection<string> known)
    {
        foreach (var name in given.Where(g => !known.Contains(g, StringComparer.Ordinal)))
        {
            Add($"{binding.Name}: {binding.Use} has no {what} '{name}'", Given.Instead(name, known, "accepted: " + string.Join(", ", known)));
        }
    }

    private LinkedInput? Input(InputInfo info)
    {
        if (Units.Find(info.Unit) is not { } unit)
        {
            Add($"{binding.Use}: the plug-in's role '{info.Role}' has the unknown unit '{info.Unit}'");
            return null;
        }

        return binding.Inputs.GetValueOrDefault(info.Role) switch
        {
            InputSource.FromPoint from => FromPoint(info, unit, from.Tag),
            InputSource.Constant constant => FromConstant(info, unit, constant),
            _ => NotBound(info, unit),
        };
    }

    private LinkedInput? FromPoint(InputInfo info, Unit unit, string tag)
    {
        var point = site.FindPoint(tag)!;
        if (!Units.CanConvert(point.Unit, unit))
        {
            Add($"{binding.Name}: {point.Tag} is in {point.Unit}, which '{info.Role}' cannot take", "accepted: " + Units.AcceptedFor(unit));
            return null;
        }

        var lag = binding.Lags.GetValueOrDefault(info.Role);
        var key = lag == TimeSpan.Zero ? point.Tag : $"{point.Tag} before {lag}";
        return new LinkedInput(info, unit, key, point, null, lag);
    }

    private LinkedInput? FromConstant(InputInfo info, Unit unit, InputSource.Constant constant)
    {
        var from = constant.Unit ?? unit;
        if (!Units.CanConvert(from, unit))
        {
            Add($"{binding.Name}: '{info.Role}' is given in {from}, which does not convert", "accepted: " + Units.AcceptedFor(unit));
            return null;
        }

        var value = Units.Convert(constant.Value, from, unit);
        if (value < info.Lowest || value > info.Highest)
        {
            Add($"{binding.Name}: '{info.Role}' is {Words.Number(value)} {unit}", $"accepted: {Words.Number(info.Lowest)} to {Words.Number(info.Highest)} {unit}");
        }

        return Constant(info, unit, value, Units.ConvertDifference(constant.U, from, unit));
    }

    /// <summary>A role that the binding leaves open takes what the site says of itself, else the plug-in's default, else nothing.</summary>
    private LinkedInput? NotBound(InputInfo info, Unit unit)
    {
        if (info.Role.Equals("altitude", StringComparison.Ordinal) && Units.Find("m") is { } metre && Units.CanConvert(metre, unit))
        {
            return Constant(info, unit, Units.Convert(site.AltitudeM, metre, unit), 0);
        }

        if (info.Default is { } value)
        {
            return Constant(info, unit, value, 0);
        }

        if (info.Required)
        {
            Add($"{binding.Name}: the input '{info.Role}' is missing", $"inputs.{info.Role} = a tag in {unit}, or {{ value = \"... {unit}\" }}");
        }

        return null;
    }

    private LinkedInput Constant(InputInfo info, Unit unit, double value, double u) =>
        new(info, unit, $"{binding.Name}.{info.Role}", null, new Quantity(value, u, info.Role.Replace('-', ' ')), TimeSpan.Zero);

    private LinkedOutput? Output(OutputInfo info)
    {
        var point = binding.Outputs.GetValueOrDefault(info.Id) is { } tag ? site.FindPoint(tag) : null;
        var output = PlugInOutput.Link(binding.Use, info, point, binding.MethodU.GetValueOrDefault(info.Id), binding.Estimates.GetValueOrDefault(info.Id), binding.Place, mistakes);
        if (output is not null && point is not null && !Units.CanConvert(output.Unit, point.Unit))
        {
            Add($"{binding.Name}: {point.Tag} is in {point.Unit}, the output '{info.Id}' in {output.Unit}", "a derived point in one of: " + Units.AcceptedFor(output.Unit));
            return null;
        }

        return output is null ? null : output with { Settles = binding.Settles.TryGetValue(info.Id, out var settles) ? settles : info.Settles };
    }

    private void Add(string wrong, string accepted = "") => mistakes.Add(new Mistake(binding.Place, wrong, accepted));
}
