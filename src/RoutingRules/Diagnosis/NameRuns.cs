using System.Globalization;
using RoutingRules.Checking.Facts;

namespace RoutingRules.Diagnosis;

/// <summary>Names as a person would say them: those that only count on stand as a run, <c>Mon 1–5</c>.</summary>
internal static class NameRuns
{
    /// <summary>Fewer names than this are listed.</summary>
    private const int Least = 3;

    public static string Of(IEnumerable<string> names)
    {
        var all = names.Distinct(StringComparer.Ordinal).ToList();
        var runs = new List<string>();
        for (var i = 0; i < all.Count; )
        {
            var end = i + 1;
            while (
                end < all.Count && Number(all[i]) is { } first && Number(all[end]) is { } next && next.Stem == first.Stem && next.Value == first.Value + end - i
            )
            {
                end++;
            }

            if (end - i >= Least)
            {
                runs.Add($"{all[i]}–{Number(all[end - 1])!.Value.Value.ToString(CultureInfo.InvariantCulture)}");
            }
            else
            {
                runs.AddRange(all[i..end]);
            }

            i = end;
        }

        return Wording.Names(runs, false);
    }

    private static (string Stem, int Value)? Number(string name)
    {
        var stem = name.AsSpan().TrimEnd("0123456789").ToString();
        return stem.Length < name.Length && int.TryParse(name.AsSpan(stem.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            ? (stem, value)
            : null;
    }
}
