using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Makes labels that fit the displays of a console and differ from one another as far as that can be.</summary>
internal sealed class ChannelLabels(SignalGraph graph)
{
    private const int MaxTries = 99;

    private readonly Dictionary<Point, string> texts = [];
    private readonly HashSet<(Id<Device> Device, string Text)> taken = [];

    /// <summary>Labels a run; the first label of a point counts.</summary>
    public void Write(PointRange run, string name)
    {
        for (var i = 0; i < run.Width; i++)
        {
            if (!texts.ContainsKey(run[i]))
            {
                texts.Add(
                    run[i],
                    Fit(
                        run[i],
                        name,
                        run.Width == 2
                            ? i == 0
                                ? " L"
                                : " R"
                            : ""
                    )
                );
            }
        }
    }

    /// <summary>The labels, in point order.</summary>
    public IEnumerable<PointLabel> Labels() =>
        texts.OrderBy(pair => graph.Find(pair.Key)).Select(pair => new PointLabel { At = Runs.One(pair.Key), Text = pair.Value });

    private string Fit(Point at, string name, string side)
    {
        var most = graph.GroupOf(graph.Find(at)).Model.LabelLength ?? int.MaxValue;
        for (var number = 1; number <= MaxTries; number++)
        {
            var tail = (number == 1 ? "" : number.ToString(CultureInfo.InvariantCulture)) + side;
            var text = Cut(name, most - tail.Length) + tail;
            if (taken.Add((at.Device, text)))
            {
                return text;
            }
        }

        return Cut(name, most);
    }

    private static string Cut(string text, int most) =>
        text.Length <= most ? text
        : most <= 0 ? ""
        : text[..(char.IsHighSurrogate(text[most - 1]) ? most - 1 : most)].TrimEnd();
}
