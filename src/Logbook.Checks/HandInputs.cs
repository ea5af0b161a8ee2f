using Logbook.Contracts;
using Logbook.Plant;
using Logbook.Plant.Reading;

namespace Logbook.Checks;

/// <summary>Roles and values as typed for a calculation by hand.</summary>
internal sealed class HandInputs(CalculationInfo info, IReadOnlyDictionary<string, Quantity> constants, List<Mistake> mistakes)
{
    private readonly HashSet<string> _typed = new(StringComparer.Ordinal);
    private readonly Dictionary<string, double> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, double> _u = new(StringComparer.Ordinal);

    public IReadOnlyList<LinkedInput> Read(IReadOnlyList<string> typed, IReadOnlyList<string> uncertainties)
    {
        foreach (var pair in typed)
        {
            if (Split(pair) is not var (role, text))
            {
                continue;
            }

            if (!_typed.Add(role.Role))
            {
                mistakes.Add(Mistake.Typed($"{role.Role} is given twice", "give it once"));
            }
            else if (ParseQuantity.Parse(role.Role, UnitOf(role), text, null, Place.Unknown, mistakes) is { } value)
            {
                _values[role.Role] = value.Number;
            }
        }

        foreach (var pair in uncertainties)
        {
            if (Split(pair) is var (role, text) && Uncertainty(role, text) is { } u)
            {
                _u[role.Role] = u;
            }
        }

        return [.. info.Inputs.Select(Input).OfType<LinkedInput>()];
    }

    public static string Range(InputInfo role) => $"{Words.Number(role.Lowest)} to {Words.Number(role.Highest)} {role.Unit}";

    public static IReadOnlyList<LinkedOutput> Outputs(CalculationInfo info, List<Mistake> mistakes) =>
        [.. info.Outputs.Select(o => PlugInOutput.Link(info.Id, o, null, null, null, Place.Unknown, mistakes)).OfType<LinkedOutput>()];

    private LinkedInput? Input(InputInfo role)
    {
        var constant = _typed.Contains(role.Role) ? null : constants.GetValueOrDefault(role.Role);
        var value = _values.TryGetValue(role.Role, out var given) ? given : constant?.Value ?? role.Default;
        if (value is null)
        {
            if (role.Required && !_typed.Contains(role.Role)) // what was typed and could not be read is said already
            {
                mistakes.Add(Mistake.Typed($"{role.Role} is missing ({role.Meaning})", $"{role.Role}=VALUE in {role.Unit}, {Range(role)}"));
            }

            return null;
        }

        return new LinkedInput(role, UnitOf(role), role.Role, null, new Quantity(value.Value, _u.TryGetValue(role.Role, out var u) ? u : constant?.U ?? 0, role.Role.Replace('-', ' ')), TimeSpan.Zero);
    }

    private (InputInfo Role, string Text)? Split(string pair)
    {
        var equals = pair.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0)
        {
            mistakes.Add(Mistake.Typed($"'{pair}' has no '='", "role=VALUE[ UNIT]"));
            return null;
        }

        var name = pair[..equals].Trim();
        if (info.Inputs.FirstOrDefault(i => i.Role.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } role)
        {
            return (role, pair[(equals + 1)..].Trim());
        }

        string[] roles = [.. info.Inputs.Select(i => i.Role)];
        mistakes.Add(Mistake.Typed($"{info.Id} has no role '{name}'", Given.Instead(name, roles, "accepted: " + string.Join(", ", roles))));
        return null;
    }

    private double? Uncertainty(InputInfo role, string text)
    {
        if (Uncertainties.Parse(text, Place.Unknown, out var mistake) is { } u)
        {
            return u.Of(_values.TryGetValue(role.Role, out var value) ? value : constants.GetValueOrDefault(role.Role)?.Value ?? role.Default ?? 0);
        }

        mistakes.Add(mistake! with { Wrong = $"{role.Role}: {mistake.Wrong}" });
        return null;
    }

    private Unit UnitOf(InputInfo role)
    {
        if (Units.Find(role.Unit) is { } unit)
        {
            return unit;
        }

        mistakes.Add(Mistake.Typed($"{info.Id}: the plug-in's role '{role.Role}' has the unknown unit '{role.Unit}'"));
        return new Unit(role.Unit, role.Unit, 1);
    }
}
