using System.Runtime.InteropServices;

namespace Logbook.Checks.CrossExamination;

/// <summary>What entries tell of an error, rows and readings together, the plant as usual and being moved.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Told(Tried Quiet, Tried Changed)
{
    public static Told operator +(Told a, Told b) => new(a.Quiet + b.Quiet, a.Changed + b.Changed);

    /// <param name="glance">An entry.</param>
    /// <param name="moved">How far the error moves each of its places, scaled.</param>
    public static Told Of(Glance glance, ReadOnlySpan<double> moved) => new(glance.Quiet?.Try(moved) ?? default, glance.Changed?.Try(moved) ?? default);
}
