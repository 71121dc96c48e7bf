using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 8: whatever text comes in, the answer is findings and never a failure; what can be read is checked and can be assigned.</summary>
public sealed class NothingLostPromises
{
    private static readonly string[] Fragments =
    [
        "null",
        "[]",
        "{}",
        "\"\"",
        "-1",
        "1e400",
        "\"desk-1/aux/1-99999\"",
        "\"box-1/out/0\"",
        "\"feed-1\"",
        ",",
        "}",
        "\"extensions\":{},",
        "2147483648",
    ];

    [Property(MaxTest = Promise.Cases)]
    public Property Random_bytes_give_findings() =>
        Prop.ForAll(
            Gen.Choose(0, 255).Select(value => (byte)value).ArrayOf().ToArbitrary(),
            bytes =>
            {
                var read = ShowReader.Read(bytes);
                return !read.IsUsable && !read.Findings.IsEmpty && read.Findings.All(finding => finding.Line is null or >= 1);
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Mutated_shows_are_read_checked_and_assigned_without_failing() =>
        Promise.Of(
            Mutations(),
            mutation => mutation.Show,
            mutation =>
            {
                var read = ShowReader.Read(mutation.Utf8);
                if (read.Value is null)
                {
                    return read.Findings.IsEmpty ? "Nothing was read and nothing said." : null;
                }

                var check = Promise.Engine.Check(read.Value);
                return check.Undecided.FirstOrDefault(subject => subject.IsFault) is { } fault ? $"{fault.Rule} on {fault.Subject}: {fault.Reason}"
                    : AssignCases.Assign(read.Value, AssignCases.Small).Show is null ? "No result."
                    : null;
            }
        );

    private static Arbitrary<Mutation> Mutations() =>
        Arb.From(
            from show in Gen.OneOf(ShowArbitraries.Messy().Generator, ShowArbitraries.ToAssign().Generator)
            from changes in Gen.Choose(0, int.MaxValue - 1).ArrayOf(3)
            select new Mutation(show, Change(ShowWriter.ToUtf8(show), changes))
        );

    /// <summary>Puts a fragment in place of a value, or a byte in place of a byte, at places drawn from the numbers.</summary>
    private static byte[] Change(byte[] utf8, int[] changes)
    {
        var text = Encoding.UTF8.GetString(utf8);
        foreach (var change in changes)
        {
            var values = Enumerable.Range(0, text.Length).Where(i => text[i] == ':').ToArray();
            if (values.Length == 0)
            {
                break;
            }

            var start = values[change % values.Length] + 1;
            var end = text.IndexOfAny([',', '\n', '}', ']'], start);
            text = (change % 3) switch
            {
                0 => text.Remove(change % text.Length, 1),
                _ => string.Concat(text.AsSpan(0, start), Fragments[change / 7 % Fragments.Length], text.AsSpan(end < 0 ? text.Length : end)),
            };
        }

        return Encoding.UTF8.GetBytes(text);
    }

    private sealed record Mutation(Show Show, byte[] Utf8);
}
