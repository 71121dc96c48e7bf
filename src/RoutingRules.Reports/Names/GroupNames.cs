using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Reports.Names;

/// <summary>What a group of points is called, and what the panel prints at each.</summary>
internal sealed class GroupNames(PortGroup group)
{
    private readonly ValueList<string> marks = group.PanelLabels;

    // A profile names its groups as it likes; these ids are short for a word of the trade.
    private readonly (string One, string Many) word = (group.Kind, group.Id.Value) switch
    {
        (PortKind.Input, "in") => ("input", "inputs"),
        (PortKind.Output, "out") => ("output", "outputs"),
        (PortKind.Sink, "channel") => ("channel", "channels"),
        (PortKind.Transmit, "transmit") => ("transmit slot", "transmit slots"),
        (PortKind.Receive, "receive") => ("receive slot", "receive slots"),
        (PortKind.Network, "net") => ("network jack", "network jacks"),
        (_, var id) => (id, id),
    };

    /// <summary>The word for one of its points.</summary>
    public string One => word.One;

    /// <summary>False where the panel prints the numbers themselves.</summary>
    public bool HasMarks => !marks.IsEmpty;

    /// <summary>Writes what the numbers and runs of numbers, such as <c>1-4, 7</c>, are called.</summary>
    public void Append(StringBuilder output, ReadOnlySpan<char> numbers)
    {
        output.Append(numbers.ContainsAny('-', ',') ? word.Many : word.One).Append(' ');
        while (!numbers.IsEmpty)
        {
            var digits = numbers.IndexOfAnyExceptInRange('0', '9');
            var number = digits < 0 ? numbers : numbers[..digits];
            if (number.IsEmpty)
            {
                output.Append(numbers[0]);
                numbers = numbers[1..];
                continue;
            }

            output.Append(Mark(int.Parse(number, NumberStyles.None, CultureInfo.InvariantCulture)));
            numbers = numbers[number.Length..];
        }
    }

    /// <summary>What the panel prints at a point.</summary>
    public string Mark(int number) =>
        number >= 1 && number <= marks.Count && marks[number - 1].Length > 0
            ? VisibleText.OfPlain(marks[number - 1])
            : number.ToString(CultureInfo.InvariantCulture);
}
