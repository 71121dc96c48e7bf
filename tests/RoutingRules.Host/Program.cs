using RoutingRules;
using RoutingRules.Documents;
using RoutingRules.Signal.Profiles;

// A host that only checks and assigns needs the core alone: SHOW, then a folder of profiles.
var engine = RoutingEngine.CreateBuilder().AddProfiles(new FolderProfileSource(args[1])).Build();
var read = ShowReader.ReadFile(args[0]);
var result = engine.Assign(read.Value ?? throw new InvalidDataException(read.Findings[0].Message));
var check = engine.Check(result.Show);
Console.WriteLine($"{result.Placements.Count} placed, {result.Unplaced.Count} not, {result.Status}, {result.Objective}");
Console.WriteLine($"{check.Rules.Count} rules, {check.Findings.Count} findings, {check.Undecided.Count} undecided");
