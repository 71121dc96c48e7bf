using System.Globalization;

namespace RoutingRules.Assignment.Result;

/// <summary>How full links are, in words.</summary>
internal static class LinkWords
{
    /// <summary>One direction of a link that has no room left.</summary>
    public static string Full(LinkUse use) =>
        $"link '{use.Link}' from {use.From} to {use.To} is full: "
        + $"{Megabits(use.BitsPerSecond)} of the {Megabits(use.MostBitsPerSecond ?? 0)} Mbit/s that streams may take";

    public static string Megabits(long bits) => string.Create(CultureInfo.InvariantCulture, $"{bits / 1_000_000.0:0.##}");
}
