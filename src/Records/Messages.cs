using System.Text.Json.Serialization;

namespace SecondShore.Records;

/// <summary>Records sent to the host.</summary>
/// <param name="Records">At most <see cref="RecordRules.MaxRecordsPerMessage"/>.</param>
public sealed record PushRequest(IReadOnlyList<LakeRecord> Records);

/// <summary>A record that the host does not take.</summary>
/// <param name="Id">Its id as sent.</param>
/// <param name="Why">One sentence.</param>
public sealed record RefusedRecord(string Id, string Why);

/// <summary>The host's word that everything sent is on its disk, save what it names as refused.</summary>
/// <param name="Epoch">The store's epoch: another one means that the store was restored or made anew.</param>
/// <param name="Added">Records that were new.</param>
/// <param name="Known">Records that were there already.</param>
/// <param name="Refused">Records not taken, with the reason.</param>
public sealed record PushAnswer(string Epoch, int Added, int Known, IReadOnlyList<RefusedRecord> Refused);

/// <summary>A page of the host's records of a lake, in the order in which they were kept.</summary>
/// <param name="Epoch">The store's epoch.</param>
/// <param name="Cursor">Where to go on: the number of the last record of the page.</param>
/// <param name="More">Whether more are waiting.</param>
/// <param name="Records">The records after the cursor that was sent.</param>
public sealed record PullAnswer(string Epoch, long Cursor, bool More, IReadOnlyList<LakeRecord> Records);

/// <summary>A lake as the host lists it.</summary>
/// <param name="Id">Its id at the host.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Records">How many records it holds.</param>
/// <param name="MayWrite">Whether the asking device may add to it.</param>
public sealed record HostLake(string Id, string Name, long Records, bool MayWrite);

/// <summary>A lake to be made at the host.</summary>
/// <param name="Name">What it is called.</param>
public sealed record NewHostLake(string Name);

/// <summary>How the host stands to the device that asks.</summary>
/// <param name="Version">The program's version.</param>
/// <param name="Pairing">Whether devices must pair before they read or write.</param>
/// <param name="Known">Whether the asking device is paired, or needs not.</param>
/// <param name="Device">The asking device's name; null where it is not known.</param>
public sealed record HostStanding(string Version, bool Pairing, bool Known, string? Device);

/// <summary>A device asks to be paired.</summary>
/// <param name="Code">The one-time code that the host shows.</param>
/// <param name="Name">What the user calls the device.</param>
public sealed record PairRequest(string Code, string Name);

/// <summary>The device is paired.</summary>
/// <param name="Device">Its id.</param>
/// <param name="Token">Its token, shown this once; sent with every request from now on.</param>
public sealed record PairAnswer(string Device, string Token);

/// <summary>Why the host does not do what was asked, as RFC 9457 has it (application/problem+json).</summary>
/// <param name="Status">The answer's status.</param>
/// <param name="Title">The status in words.</param>
/// <param name="Detail">One sentence that says what to do.</param>
public sealed record HostProblem(int Status, string Title, string Detail);

/// <summary>What moves between device and host, read and written without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, MaxDepth = 16)]
[JsonSerializable(typeof(PushRequest))]
[JsonSerializable(typeof(PushAnswer))]
[JsonSerializable(typeof(PullAnswer))]
[JsonSerializable(typeof(IReadOnlyList<HostLake>))]
[JsonSerializable(typeof(NewHostLake))]
[JsonSerializable(typeof(HostStanding))]
[JsonSerializable(typeof(PairRequest))]
[JsonSerializable(typeof(PairAnswer))]
[JsonSerializable(typeof(HostProblem))]
[JsonSerializable(typeof(HostLake))]
[JsonSerializable(typeof(FileVersion))]
public sealed partial class RecordsJson : JsonSerializerContext;
