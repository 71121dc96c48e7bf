using RoutingRules.Model;

namespace RoutingRules.Networks;

/// <summary>How far a link works for sure, and how far the best of what its stated medium and speed leave open.</summary>
/// <remarks>
/// Copper: 100 m of balanced pairs (ANSI/TIA-568, after public summaries), category 6 at 10 Gbit/s 55 m (IEEE 802.3an, from memory). Fibre on Ethernet:
/// IEEE 802.3, clauses 26, 38 and 52 (from memory): 100BASE-FX 2 km; 1000BASE-SX 275 m on OM1, else 550 m; 10GBASE-SR 33, 82, 300 and 400 m on OM1 to OM4;
/// 1000BASE-LX 5 km and 100BASE-LX10 and 10GBASE-LR 10 km of single mode. Digital multicore (AES10): coaxial 100 m, multimode fibre 2 km (handbook excerpt
/// and encyclopaedia).
/// </remarks>
internal readonly record struct LinkReach(double Least, double Most)
{
    private const int Fast = 100;
    private const int Gigabit = 1000;
    private const int TenGigabit = 10_000;

    private static readonly Medium[] Grades = [Medium.Om1, Medium.Om2, Medium.Om3, Medium.Om4, Medium.Om5];

    /// <summary>What is known of a link; null when the engine has no figure for its medium at its speed.</summary>
    /// <param name="medium">What it is made of.</param>
    /// <param name="speed">Mbit/s; null when nothing was said.</param>
    /// <param name="isMulticore">True where the link is a digital multicore and not Ethernet.</param>
    public static LinkReach? Of(Medium medium, int? speed, bool isMulticore)
    {
        if (medium == Medium.Coax)
        {
            return isMulticore ? new(100, 100) : null;
        }

        if (Fibre(medium, speed, isMulticore) is { } fibre)
        {
            return fibre;
        }

        return medium == Medium.Cat6 && speed >= TenGigabit ? new(55, 55)
            : medium == Medium.Cat5E && speed >= TenGigabit ? null
            : IsCopper(medium) ? new(100, 100)
            : null;
    }

    /// <summary>True for balanced pairs.</summary>
    public static bool IsCopper(Medium medium) => medium == Medium.CopperSolid || medium == Medium.CopperStranded || IsCategory(medium);

    /// <summary>True for a category of cable, which leaves open whether its cores are solid.</summary>
    public static bool IsCategory(Medium medium) => medium == Medium.Cat5E || medium == Medium.Cat6 || medium == Medium.Cat6A;

    private static LinkReach? Fibre(Medium medium, int? speed, bool isMulticore)
    {
        var grade = Array.IndexOf(Grades, medium);
        if (grade >= 0 || medium == Medium.FibreMultimode)
        {
            var (low, high) = grade >= 0 ? (grade, grade) : (0, Grades.Length - 1);
            return isMulticore ? new(2000, 2000)
                : speed is null ? new(Multimode(low, TenGigabit)!.Value, Multimode(high, Fast)!.Value)
                : Multimode(low, speed.Value) is { } least ? new(least, Multimode(high, speed.Value)!.Value)
                : null;
        }

        return isMulticore || (medium != Medium.FibreSinglemode && medium != Medium.Os1 && medium != Medium.Os2)
            ? null
            : speed switch
            {
                null => new(5000, 10_000),
                Gigabit => new(5000, 5000),
                Fast or TenGigabit => new(10_000, 10_000),
                _ => null,
            };
    }

    private static double? Multimode(int grade, int speed) =>
        speed switch
        {
            Fast => 2000,
            Gigabit => grade == 0 ? 275 : 550,
            TenGigabit => (grade) switch
            {
                0 => 33,
                1 => 82,
                2 => 300,
                _ => 400,
            },
            _ => null,
        };
}
