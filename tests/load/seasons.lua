-- Asks for the lines of the file named in PATHS, one after the other, again and again.
local paths, place = {}, 0

function init()
    for path in io.lines(os.getenv("PATHS")) do
        paths[#paths + 1] = path
    end
end

function request()
    place = place % #paths + 1
    return wrk.format("GET", paths[place])
end
