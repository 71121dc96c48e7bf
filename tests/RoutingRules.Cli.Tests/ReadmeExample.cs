// Program text for README.md: what stands between the two marker comments is shown there word for word.
// readme: begin
using RoutingRules;
using RoutingRules.Documents;
using RoutingRules.Profiles.Generic;

public static class LoadIn
{
    /// <summary>Completes the patch of a show and says what is still wrong with it.</summary>
    public static IEnumerable<string> Prepare(byte[] document)
    {
        var engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();
        var read = ShowReader.Read(document);
        if (!read.IsUsable)
        {
            return read.Findings.Select(finding => $"line {finding.Line}: {finding.Message}");
        }

        var result = engine.Assign(read.Value!);
        return [.. result.Unplaced.Select(demand => $"{demand.Demand}: {demand.Reason}"), .. result.Check.Findings.Select(finding => finding.Message)];
    }
}
// readme: end
