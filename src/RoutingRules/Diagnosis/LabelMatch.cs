using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>Labels at the two ends of a path: what somebody wrote there says what belongs together.</summary>
internal sealed class LabelMatch
{
    private readonly Dictionary<int, string> texts = [];

    /// <summary>For each point the labelled points that it leads to.</summary>
    private readonly Dictionary<int, List<int>> through = [];
    private readonly Overlay? plain;

    public LabelMatch(ResolvedShow show)
    {
        plain = new Overlay(show.Graph, []);
        foreach (var label in show.Document.Patch.Labels)
        {
            for (var i = 0; show.Graph.Find(label.At, out var first) == ConnectionState.Connected && i < label.At.Width; i++)
            {
                texts.TryAdd(first.Value + i, label.Text);
            }
        }

        foreach (var point in texts.Keys)
        {
            foreach (var passed in show.Graph.Upward(new PointIndex(point)))
            {
                if (!through.TryGetValue(passed.Value, out var ends))
                {
                    through.Add(passed.Value, ends = []);
                }

                ends.Add(point);
            }
        }
    }

    private LabelMatch() { }

    /// <summary>Labels of a show that nobody looks at.</summary>
    public static LabelMatch None { get; } = new();

    /// <summary>By how many more labels disagree with that of their source, or stand at a point without signal; less than 0 when more agree.</summary>
    public int Change(Overlay overlay)
    {
        if (texts.Count == 0)
        {
            return 0;
        }

        var ends = new HashSet<int>();
        foreach (var point in overlay.Changed.Keys)
        {
            if (through.TryGetValue(point, out var led))
            {
                ends.UnionWith(led);
            }
        }

        var sum = 0;
        foreach (var end in ends)
        {
            sum += Disagrees(overlay, end) - Disagrees(plain!, end);
        }

        return sum;
    }

    /// <summary>1 when the next label on the way up is another one or there is none, else 0.</summary>
    private int Disagrees(Overlay overlay, int end)
    {
        var point = overlay.Upstream(end);
        for (var hops = 0; point >= 0 && hops < 96; hops++)
        {
            if (texts.TryGetValue(point, out var text))
            {
                return string.Equals(text, texts[end], StringComparison.OrdinalIgnoreCase) ? 0 : 1;
            }

            point = overlay.Upstream(point);
        }

        return 1;
    }
}
