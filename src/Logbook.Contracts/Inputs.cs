namespace Logbook.Contracts;

/// <summary>The numbers a calculation is given, each in the unit of its role.</summary>
/// <param name="values">Role to number; an optional role that was not given is absent.</param>
public sealed class Inputs(IReadOnlyDictionary<string, double> values)
{
    /// <summary>The value of a role that is present.</summary>
    /// <exception cref="KeyNotFoundException">The role is optional and was not given.</exception>
    public double this[string role] => values[role];

    /// <summary>True when the role was given or has a default.</summary>
    public bool Has(string role) => values.ContainsKey(role);

    /// <summary>The value of a role, or null when it was not given.</summary>
    public double? Find(string role) => values.TryGetValue(role, out var value) ? value : null;
}
