# Installs the library, builds a program of another project against it, and lets it draw a pattern.
function(must)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE status OUTPUT_VARIABLE output ERROR_VARIABLE output)
  if(NOT status EQUAL 0)
    message(FATAL_ERROR "${ARGN}\n${output}")
  endif()
endfunction()

file(REMOVE_RECURSE ${WORK})
must(${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/prefix)
must(${CMAKE_COMMAND} -G "${GENERATOR}" -S ${SOURCE} -B ${WORK}/build -DCMAKE_PREFIX_PATH=${WORK}/prefix "-DCMAKE_CXX_FLAGS=${FLAGS}"
  -DCMAKE_CXX_STANDARD=20)
must(${CMAKE_COMMAND} --build ${WORK}/build)
execute_process(COMMAND ${WORK}/build/uses_whorl ${PATTERN} OUTPUT_FILE ${WORK}/chart.svg RESULT_VARIABLE status)
file(READ ${WORK}/chart.svg svg)
if(NOT status EQUAL 0 OR NOT svg MATCHES "<svg.*<title.*</svg>")
  message(FATAL_ERROR "the installed library drew no chart")
endif()
