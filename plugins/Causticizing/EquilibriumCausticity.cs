using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Causticizing;

/// <summary>The highest causticity that a liquor of this strength can reach.</summary>
public sealed class EquilibriumCausticity : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "equilibrium-causticity",
        Title = "Equilibrium causticity, and the distance to it",
        System = "causticizers",
        Purpose = "No lime brings the liquor above its equilibrium, which falls as the liquor gets stronger and hardly moves with temperature. Two to five "
            + "points below it is usual; nearer means over-liming, above it means an error. The constant is the mill's own to fit.",
        Formula = "t = tta / 61.97854 (mol/L); s = sulphidity-tta / 100; a = t (1 - s); b = s t; k = constant\n"
            + "(2 a x + b)^2 = k a (1 - x)\n"
            + "x = (-(4 a b + k a) + sqrt((4 a b + k a)^2 - 16 a^2 (b^2 - k a))) / (8 a^2)\nequilibrium = 100 x\n"
            + "distance = equilibrium - causticity\nconversion = 100 (equilibrium - gl-causticity) / (100 - gl-causticity)",
        Source = "Mass action law solved exactly; constant 55 mol/L from memory of the kraft causticizing curves, within 2 points of causticity",
        LeavesOut = "The activity of the salts: one constant holds within about a point from 100 to 140 g/L. Time: it is where the reaction would end.",
        Inputs =
        [
            new("tta", "g/L Na2O", "total titratable alkali", 1, 250),
            new("sulphidity-tta", "%", "sulphide of the total titratable alkali", 0, 95),
            new("constant", "mol/L", "hydroxide squared over carbonate at equilibrium", 5, 500) { Default = 55 },
            new("causticity", "%", "causticity reached", 0, 100) { Required = false },
            new("gl-causticity", "%", "causticity of the green liquor", 0, 95) { Required = false },
        ],
        Outputs =
        [
            new("equilibrium", "%", "causticity at equilibrium"),
            new("distance", "points", "equilibrium less the causticity reached"),
            new("conversion", "%", "share of the green liquor's carbonate that can turn"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (tta, sulphidity, constant) = (inputs["tta"], inputs["sulphidity-tta"], inputs["constant"]);
        var t = tta / MolarMass.Na2O;
        var a = t * (1 - (sulphidity / 100));
        var b = t - a;
        var p = (4 * a * b) + (constant * a);
        var x = (-p + Math.Sqrt((p * p) - (16 * a * a * ((b * b) - (constant * a))))) / (8 * a * a);
        if (!(x > 0))
        {
            return Worksheet.Refuse("sulphidity-tta", $"sulphidity-tta of {sulphidity:0.#} % at {tta:0.#} g/L leaves no causticity at equilibrium: it lies below that");
        }

        var sheet = new Worksheet();
        sheet.Step($"t = {tta:0.##} / {MolarMass.Na2O:0.00000} = {t:0.00000} mol/L; a = {a:0.00000}, b = {b:0.00000}");
        sheet.Step($"4 a b + k a = 4 x {a:0.00000} x {b:0.00000} + {constant:0.##} x {a:0.00000} = {p:0.0000}");
        sheet.Give("equilibrium", 100 * x, $"equilibrium = 100 x (-{p:0.0000} + sqrt({p:0.0000}^2 - 16 x {a:0.00000}^2 x ({b:0.00000}^2 - {constant:0.##} x {a:0.00000}))) / (8 x {a:0.00000}^2) = {100 * x:0.00} %");
        if (inputs.Find("causticity") is { } reached)
        {
            var distance = (100 * x) - reached;
            sheet.Give("distance", distance, $"distance = {100 * x:0.00} - {reached:0.00} = {distance:0.00} points");
            Advise(sheet, distance);
        }

        if (inputs.Find("gl-causticity") is { } green)
        {
            if (green >= 100 * x)
            {
                return Worksheet.Refuse("gl-causticity", $"gl-causticity ({green:0.##} %) is not below equilibrium ({100 * x:0.##} %): no green liquor comes so");
            }

            var conversion = 100 * ((100 * x) - green) / (100 - green);
            sheet.Give("conversion", conversion, $"conversion = 100 x ({100 * x:0.00} - {green:0.00}) / (100 - {green:0.00}) = {conversion:0.00} %");
        }

        return sheet.ToValues();
    }

    private static void Advise(Worksheet sheet, double distance)
    {
        if (distance < 0)
        {
            sheet.Note($"{-distance:0.0} points above equilibrium, which cannot be: an end point of the titration or the strength is off, or the constant does not fit this mill.");
        }
        else if (distance < 2)
        {
            sheet.Note($"{distance:0.0} points below equilibrium: more lime would hardly raise causticity and stay as free lime (pressure difference up, mud wetter); or the titration reads high.");
        }
    }
}
